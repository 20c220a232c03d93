import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { noBrowser } from "../support/browser.ts";
import { answerFromFixture, type FixtureVisit, PLAN, visitFixture } from "./fixture/answers.ts";
import { planDrawn, readPlan, sidewaysOverflow } from "./plan-view.ts";
import { DESK, openHouse, PHONE } from "./visits.ts";

/** WCAG 2.2, 1.4.10: no scrolling in two directions at 320 CSS px. */
const NARROWEST = { width: 320, height: 640 };
const STRICT = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'";

/** Serves the plan's page as the service does, but under another content security policy. */
async function replacePolicy(page: Page, policy: string): Promise<void> {
  await page.route(`**${PLAN}`, async (route) => {
    const answer = await route.fetch();
    const headers = { ...answer.headers(), "content-security-policy": policy };
    await route.fulfill({ response: answer, headers });
  });
}

describe.skipIf(noBrowser)(
  "the page of a night's plan, however it is looked at and whatever comes of it,",
  () => {
    let house: Awaited<ReturnType<typeof openHouse>>;

    beforeAll(async () => {
      house = await openHouse();
    });
    afterEach(() => house?.leave());
    afterAll(() => house?.close());

    const visit = (where: string, fixtureVisit: FixtureVisit = {}) =>
      visitFixture(house, where, fixtureVisit);

    async function visitPlan(query = "", fixtureVisit: FixtureVisit = {}) {
      const visited = await visit(`${PLAN}${query}`, fixtureVisit);
      await planDrawn(visited.page);
      return visited;
    }

    it("says that a night runs, with nothing in its way", async () => {
      const { page } = await visitPlan("", { check: { withoutFindings: true } });
      expect(await page.locator(".headline").textContent()).toContain("This night runs.");
      expect(await page.getByText("Nothing stands in the way").count()).toBe(1);
    });

    for (const colorScheme of ["light", "dark"] as const)
      for (const [name, viewport] of Object.entries({ desk: DESK, phone: PHONE, narrowest: NARROWEST }))
        it(`is accessible and fits sideways: ${name}, ${colorScheme}`, async () => {
          const { page, complaints } = await visitPlan("", { options: { viewport, colorScheme } });
          await page.locator("button.finding").nth(1).click();
          expect(await sidewaysOverflow(page)).toBe(0);
          const { violations } = await new AxeBuilder({ page })
            .withTags(["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"])
            .analyze();
          expect(violations.map(({ id, nodes }) => [id, nodes.map((n) => n.target)])).toEqual([]);
          expect(complaints).toEqual([]);
        });

    it("keeps the theme that was chosen", async () => {
      const { page } = await visitPlan("", { options: { colorScheme: "light" } });
      const ground = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
      const light = await ground();
      await page.getByLabel("Colours").selectOption("dark");
      const dark = await ground();
      expect(dark).not.toBe(light);
      await page.reload();
      await planDrawn(page);
      expect(await ground()).toBe(dark);
      expect(page.url()).toBe(`${house.address}${PLAN}`);
    });

    it("works under a policy that allows no inline style or script", async () => {
      const { page, complaints } = await visitPlan("", { prepare: (page) => replacePolicy(page, STRICT) });
      const width = await page
        .locator(".share")
        .first()
        .evaluate((share) => (share as HTMLElement).style.width);
      expect(width).toMatch(/%$/);
      expect(complaints).toEqual([]);
    });

    it("draws 400 trains with one element for all their lines", async () => {
      const { page, complaints } = await visitPlan("", { check: { trains: 400 } });
      expect(await page.locator("#graph-main path.train").count()).toBe(1);
      expect(await page.locator("*").count()).toBeLessThan(4_000);
      await page.locator("button.finding").first().click();
      const { moments, pictures } = await readPlan(page);
      expect(moments).toHaveLength(pictures);
      expect(complaints).toEqual([]);
    });

    it("says that it waits, lets one stop waiting, and starts again", async () => {
      const { page } = await visit(PLAN, { check: { isSlow: true } });
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
      const { page } = await visit(PLAN, { check: { problem: { status: 422, body } } });
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
        check: { problem: { status: 404, body: { detail: "There is no slot late." } } },
      });
      await page.getByRole("heading", { name: "There is no slot late." }).waitFor();
      expect(await page.getByRole("link", { name: "Go to the nights" }).count()).toBe(1);
    });
  },
);
