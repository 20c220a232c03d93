import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { noBrowser } from "../support/browser.ts";
import { type FixtureVisit, PLAN, visitFixture } from "./fixture/answers.ts";
import { fixtureReport } from "./fixture/report.ts";
import { planDrawn, readPlan } from "./plan-view.ts";
import { DESK, openHouse, PHONE } from "./visits.ts";

const report = fixtureReport(24);

describe.skipIf(noBrowser)("the page of a night's plan", () => {
  let house: Awaited<ReturnType<typeof openHouse>>;

  beforeAll(async () => {
    house = await openHouse();
  });
  afterEach(() => house?.leave());
  afterAll(() => house?.close());

  const visit = (where: string, fixtureVisit: FixtureVisit = {}) => visitFixture(house, where, fixtureVisit);

  async function visitPlan(query = "", fixtureVisit: FixtureVisit = {}) {
    const visited = await visit(`${PLAN}${query}`, fixtureVisit);
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

  it("says which handset each train may have, what is claimed, and whose turn the chosen moment is in", async () => {
    const { page } = await visitPlan();
    const [need] = report.handsets;
    const turns = need?.sharing.turns ?? [];
    const rows = page.locator(`#turns-${need?.code} tbody tr`);
    expect(await rows.count()).toBe(turns.length);
    expect(await rows.filter({ hasText: "claimed" }).count()).toBe(1);
    await page.locator("button.finding").first().click();
    const at = report.findings[0]?.atMs ?? 0;
    const now = turns.filter(({ span }) => span.startMs <= at && at < span.endMs);
    await expect
      .poll(() => page.locator(`#turns-${need?.code} tr[aria-current=time]`).count())
      .toBe(now.length);
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
      const { page } = await visitPlan("", { options: { hasTouch, viewport: hasTouch ? PHONE : DESK } });
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
    expect(page.url()).toBe(`${house.address}${PLAN}`);
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
    // the rows are made once the table is opened
    await picture.locator("tbody tr").first().waitFor();
    expect(await picture.locator("tbody tr").count()).toBe(east?.curve.length);
    const cells = await picture.locator("tbody tr").nth(1).locator("td").allTextContents();
    expect(cells[2]).toBe(((east?.curve[1]?.[1] ?? 0) / 1_000).toFixed(3));
  });

  it("says how busy each section is, the busiest first", async () => {
    const { page } = await visitPlan();
    await page.getByText("How busy each section is").click();
    const rows = page.getByRole("table", { name: "Time taken of every section" }).locator("tbody tr");
    await rows.first().waitFor();
    expect(await rows.count()).toBe(report.capacity.length);
    const busiest = Math.max(...report.capacity.map(({ share }) => share));
    expect(await rows.first().locator("td").nth(3).textContent()).toBe(`${Math.round(100 * busiest)} %`);
  });
});
