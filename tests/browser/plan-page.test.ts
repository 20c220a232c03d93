import path from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { projectRoot } from "../../src/lib/project-root.ts";
import { complaintsOf, noBrowser, openBrowser } from "../support/browser.ts";
import { testApp } from "../support/test-app.ts";
import { answerFromFixture, type CheckAnswer, PLAN } from "./fixture/answers.ts";
import { fixtureReport } from "./fixture/report.ts";
import { planDrawn, readPlan, sidewaysOverflow } from "./plan-view.ts";

const DESK = { width: 1440, height: 900 };
const PHONE = { width: 390, height: 844 };
/** WCAG 2.2, 1.4.10: no scrolling in two directions at 320 CSS px. */
const NARROWEST = { width: 320, height: 640 };
const STRICT = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'";

const report = fixtureReport(24);

/** Serves the plan's page as the service does, but under another content security policy. */
async function replacePolicy(page: Page, policy: string): Promise<void> {
  await page.route(`**${PLAN}`, async (route) => {
    const answer = await route.fetch();
    const headers = { ...answer.headers(), "content-security-policy": policy };
    await route.fulfill({ response: answer, headers });
  });
}

describe.skipIf(noBrowser)("the page of a night's plan", () => {
  let browser: Browser;
  let service: Awaited<ReturnType<typeof testApp>>;
  let address: string;
  let open: Page[] = [];

  beforeAll(async () => {
    service = await testApp({ clientDir: path.join(projectRoot(import.meta.dirname), "dist/web") });
    address = await service.app.listen({ port: 0, host: "127.0.0.1" });
    browser = await openBrowser();
  });

  afterEach(async () => {
    await Promise.all(open.map((page) => page.context().close()));
    open = [];
  });

  afterAll(async () => {
    await browser?.close();
    await service?.close();
  });

  async function visit(
    where: string,
    check: CheckAnswer = {},
    options: BrowserContextOptions = {},
    policy: string | null = null,
  ) {
    const context = await browser.newContext({ viewport: DESK, ...options });
    const page = await context.newPage();
    open.push(page);
    const complaints = complaintsOf(page);
    await answerFromFixture(page, check);
    if (policy !== null) await replacePolicy(page, policy);
    await page.goto(`${address}${where}`);
    return { page, complaints };
  }

  async function visitPlan(
    query = "",
    check: CheckAnswer = {},
    options: BrowserContextOptions = {},
    policy: string | null = null,
  ) {
    const visited = await visit(`${PLAN}${query}`, check, options, policy);
    await planDrawn(visited.page);
    return visited;
  }

  it("is two steps from the front door, and back goes back", async () => {
    const { page, complaints } = await visit("/");
    await page.getByText(report.headline).waitFor();
    expect(new URL(page.url()).pathname).toBe("/clubs/vale");
    expect(await page.getByText("19:00–22:00").count()).toBe(1);
    await page.getByRole("link", { name: "Late turn" }).click();
    await planDrawn(page);
    expect(await page.locator("h1").textContent()).toBe("Spring night");
    expect(await page.title()).toContain("Spring night");
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe("H1");
    expect(await page.locator(".headline").textContent()).toContain(report.headline);
    await page.goBack();
    await page.getByRole("heading", { name: "Nights" }).waitFor();
    expect(complaints).toEqual([]);
  });

  it("shows a finding's moment in every picture as the arrow keys go through the list", async () => {
    const { page } = await visitPlan();
    await page.locator("button.finding").first().focus();
    await page.keyboard.press("Enter");
    for (const finding of report.findings) {
      const shown = await readPlan(page);
      expect(shown.finding).toBe(finding.sentence);
      expect(shown.moments).toHaveLength(shown.pictures);
      expect(new Set(shown.moments)).toEqual(new Set([finding.atMs]));
      expect(new Set(shown.lines).size).toBe(1);
      expect(shown.chosenTrains).toEqual([...finding.trains].sort());
      await page.keyboard.press("ArrowDown");
    }
    await page.keyboard.press("Home");
    expect((await readPlan(page)).finding).toBe(report.findings[0]?.sentence);
  });

  it("scrolls no further than to the finding that the keys went to, and not at all for a mouse", async () => {
    const { page } = await visitPlan();
    await page.locator("button.finding").nth(2).click();
    expect(await page.evaluate(() => scrollY)).toBe(0);
    await page.keyboard.press("End");
    const isWhollySeen = () => {
      const box = document.activeElement?.parentElement?.getBoundingClientRect();
      return box !== undefined && box.top >= 0 && box.bottom <= innerHeight + 1;
    };
    await page.waitForFunction(isWhollySeen);
    expect(await page.locator(":focus .finding-sentence").textContent()).toBe(
      report.findings.at(-1)?.sentence,
    );
  });

  it("has as many pictures as the report has lines, working feeds and needs, and the sections", async () => {
    const { page } = await visitPlan();
    const feeds = [report.districts, report.supplies, report.outputs, report.controllers].flat();
    const working = feeds.filter(({ peakMa }) => peakMa > 0).length;
    expect((await readPlan(page)).pictures).toBe(
      report.graph.length + working + 1 + report.handsets.length + 1,
    );
  });

  it("moves the moment in all pictures from any one of them, and says so once it rests", async () => {
    const { page } = await visitPlan();
    const plots = page.locator(".plot");
    for (const picture of [0, 3, (await plots.count()) - 1]) {
      await plots.nth(picture).focus();
      const before = (await readPlan(page)).moments[0] ?? 0;
      await page.keyboard.press("ArrowRight");
      const after = await readPlan(page);
      expect(after.moments[0]).toBeGreaterThan(before);
      expect(new Set(after.moments).size).toBe(1);
    }
    const text = await plots.first().getAttribute("aria-valuetext");
    const time = text?.slice(0, 5) ?? "";
    expect(time).toMatch(/^\d\d:\d\d$/);
    await page.locator("[data-readout]", { hasText: `${time} on the layout` }).waitFor({ state: "attached" });
    expect(await page.locator("[data-readout]").textContent()).toMatch(
      /in the room\. District East .* of 1\.70 A/,
    );
  });

  it("moves the moment to where a mouse presses or a finger taps", async () => {
    for (const hasTouch of [false, true]) {
      const { page } = await visitPlan("", {}, { hasTouch, viewport: hasTouch ? PHONE : DESK });
      const plot = page.locator(".plot").first();
      await plot.scrollIntoViewIfNeeded();
      const box = await plot.boundingBox();
      if (!box) throw new Error("the picture is not shown");
      const [x, y] = [box.x + box.width * 0.6, box.y + box.height / 2];
      if (hasTouch) await page.touchscreen.tap(x, y);
      else await page.mouse.click(x, y);
      const { lines } = await readPlan(page);
      expect(Math.abs((lines[0] ?? 0) - x)).toBeLessThan(2);
      expect(new Set(lines).size).toBe(1);
    }
  });

  it("is reproduced by its address: finding, moment and window", async () => {
    const { page } = await visitPlan();
    await page.locator("button.finding").nth(2).click();
    await page.locator(".plot").first().focus();
    for (const key of ["+", "+", "ArrowRight", "ArrowRight", "Shift+ArrowLeft"])
      await page.keyboard.press(key);
    await page.waitForURL(/finding=.*&at=.*&from=.*&to=/);
    const link = page.getByRole("link", { name: /Link to this view: District East/ });
    const href = (await link.getAttribute("href")) ?? "";
    const again = await visit(href);
    await planDrawn(again.page);
    expect(await readPlan(again.page)).toEqual(await readPlan(page));
    expect(new URL(again.page.url()).hash).toBe("#district-East");
    await again.page.waitForFunction(() => scrollY > 0);
  });

  it("lets back undo the first choice, however much was looked at since", async () => {
    const { page } = await visitPlan();
    await page.locator("button.finding").first().focus();
    for (const key of ["Enter", "ArrowDown", "ArrowDown"]) await page.keyboard.press(key);
    await page.waitForURL(/finding=/);
    await page.goBack();
    await page.waitForFunction(() => !document.querySelector('button.finding[aria-expanded="true"]'));
    expect(page.url()).toBe(`${address}${PLAN}`);
  });

  it("tells a stop from a warning by shape and word", async () => {
    const { page } = await visitPlan();
    const marks = page.locator("button.finding .mark");
    const said = await marks.evaluateAll((all) =>
      all.map((mark) => [mark.textContent, mark.querySelector("svg")?.innerHTML.includes("<rect")]),
    );
    const expected = report.findings.map(({ severity }) =>
      severity === "stops" ? ["Stops", true] : ["Warns", false],
    );
    expect(said).toEqual(expected);
  });

  it("opens the data of a picture as a table", async () => {
    const { page } = await visitPlan();
    const picture = page.locator("#district-East");
    await picture.getByText("As a table").click();
    const east = report.districts[0];
    expect(await picture.locator("tbody tr").count()).toBe(east?.curve.length);
    const cells = await picture.locator("tbody tr").nth(1).locator("td").allTextContents();
    expect(cells[2]).toBe(((east?.curve[1]?.[1] ?? 0) / 1_000).toFixed(3));
  });

  it("says that a night runs, with nothing in its way", async () => {
    const { page } = await visitPlan("", { withoutFindings: true });
    expect(await page.locator(".headline").textContent()).toContain("This night runs.");
    expect(await page.getByText("Nothing stands in the way").count()).toBe(1);
  });

  for (const colorScheme of ["light", "dark"] as const)
    for (const [name, viewport] of Object.entries({ desk: DESK, phone: PHONE, narrowest: NARROWEST }))
      it(`is accessible and fits sideways: ${name}, ${colorScheme}`, async () => {
        const { page, complaints } = await visitPlan("", {}, { viewport, colorScheme });
        await page.locator("button.finding").nth(1).click();
        expect(await sidewaysOverflow(page)).toBe(0);
        const { violations } = await new AxeBuilder({ page })
          .withTags(["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"])
          .analyze();
        expect(violations.map(({ id, nodes }) => [id, nodes.map((n) => n.target)])).toEqual([]);
        expect(complaints).toEqual([]);
      });

  it("keeps the theme that was chosen", async () => {
    const { page } = await visitPlan("", {}, { colorScheme: "light" });
    const ground = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    const light = await ground();
    await page.getByLabel("Colours").selectOption("dark");
    const dark = await ground();
    expect(dark).not.toBe(light);
    await page.reload();
    await planDrawn(page);
    expect(await ground()).toBe(dark);
    expect(page.url()).toBe(`${address}${PLAN}`);
  });

  it("works under a policy that allows no inline style or script", async () => {
    const { page, complaints } = await visitPlan("", {}, {}, STRICT);
    const width = await page
      .locator(".share")
      .first()
      .evaluate((share) => (share as HTMLElement).style.width);
    expect(width).toMatch(/%$/);
    expect(complaints).toEqual([]);
  });

  it("draws 400 trains with one element for all their lines", async () => {
    const { page, complaints } = await visitPlan("", { trains: 400 });
    expect(await page.locator("#graph-main path.train").count()).toBe(1);
    expect(await page.locator("*").count()).toBeLessThan(4_000);
    await page.locator("button.finding").first().click();
    const { moments, pictures } = await readPlan(page);
    expect(moments).toHaveLength(pictures);
    expect(complaints).toEqual([]);
  });

  it("says that it waits, lets one stop waiting, and starts again", async () => {
    const { page } = await visit(PLAN, { isSlow: true });
    await page.locator(".waiting-track").waitFor();
    await page.getByRole("button", { name: "Stop waiting" }).click();
    await page.getByRole("heading", { name: "Stopped waiting." }).waitFor();
    await answerFromFixture(page);
    await page.getByRole("button", { name: "Try again" }).click();
    await planDrawn(page);
  });

  it("tells what a refusal says: what happened, what is safe, what to do", async () => {
    const body = {
      title: "Something does not fit",
      detail: "The slot cannot be checked.",
      errors: [{ pointer: "/timetable", detail: "Give the slot a timetable." }],
    };
    const { page } = await visit(PLAN, { problem: { status: 422, body } });
    const problem = page.getByRole("alert");
    await problem.waitFor();
    const text = await problem.textContent();
    expect(text).toContain("The slot cannot be checked.");
    expect(text).toContain("changes nothing");
    expect(text).toContain("Give the slot a timetable.");
  });

  it("says so at an address that leads nowhere", async () => {
    const { page, complaints } = await visit("/nowhere");
    await page.getByRole("heading", { name: "There is no page at this address" }).waitFor();
    expect(complaints).toEqual([]);
  });

  it("says so where the night of an address is gone", async () => {
    const { page } = await visit(PLAN, {
      problem: { status: 404, body: { detail: "There is no slot late." } },
    });
    await page.getByRole("heading", { name: "There is no slot late." }).waitFor();
    expect(await page.getByRole("link", { name: "Go to the nights" }).count()).toBe(1);
  });
});
