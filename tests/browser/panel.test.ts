import { AxeBuilder } from "@axe-core/playwright";
import type { BrowserContextOptions } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import type { SelectorSchedule } from "../../shared/selector-schedule.ts";
import { noBrowser } from "../support/browser.ts";
import { PLAN, visitFixture } from "./fixture/answers.ts";
import { fixtureSchedule } from "./fixture/panel.ts";
import { sidewaysOverflow } from "./plan-view.ts";
import { DESK, openHouse, PHONE } from "./visits.ts";

describe.skipIf(noBrowser)("the selector schedule for the person at the panel", () => {
  let house: Awaited<ReturnType<typeof openHouse>>;
  const made = fixtureSchedule();

  beforeAll(async () => {
    house = await openHouse();
  });
  afterEach(() => house?.leave());
  afterAll(() => house?.close());

  const visit = (schedule: SelectorSchedule, options: BrowserContextOptions = {}) =>
    visitFixture(house, `${PLAN}/panel`, {
      options,
      prepare: async (page) => {
        await page.route("**/slots/late/selector-schedule", (route) => route.fulfill({ json: schedule }));
      },
    });

  it("says how many turns there are and that none needs fewer, then every turn with a box to tick", async () => {
    const { page, complaints } = await visit(made);
    await page.getByText("No working plan needs fewer turns: proven.").waitFor();
    expect(await page.locator(".panel-moment").count()).toBe(made.moments.length);
    const boxes = page.getByRole("checkbox");
    expect(await boxes.count()).toBe(made.turns);
    const first = made.moments[0]?.turns[0];
    const box = page
      .getByRole("checkbox", { name: new RegExp(`^${first?.section} .*to ${first?.to}`) })
      .first();
    await box.check();
    expect(await box.isChecked()).toBe(true);
    const sections = page.getByRole("row").filter({ has: page.locator(".panel-step") });
    expect(await sections.count()).toBe(made.selectors);
    // output letters stand in the bands, so that no colour is needed
    const letters = new Set(await page.locator(".panel-letter").allTextContents());
    expect([...letters].sort()).toEqual(made.outputs.map(({ code }) => code).sort());
    await page.getByText("As a table").click();
    const bands = made.sections.reduce((sum, section) => sum + section.bands.length, 0);
    const table = page.getByRole("table", { name: "Positions of the selectors" });
    expect(await table.getByRole("row").count()).toBe(bands + 1);
    expect(complaints).toEqual([]);
  });

  it("says why there is none, in the words of the check, with the way to the plan", async () => {
    const none = {
      ...fixtureSchedule({ status: "no-analog" }),
      status: "no-assignment" as const,
      headline: "There is no schedule: the controllers' outputs do not suffice for this slot.",
      reasons: [{ sentence: "Three trains need two outputs.", cure: "One more output would serve." }],
    };
    const { page } = await visit(none);
    await page.getByText("Three trains need two outputs. One more output would serve.").waitFor();
    expect(await page.getByRole("checkbox").count()).toBe(0);
    expect(await page.getByRole("link", { name: "To the plan of this slot" }).getAttribute("href")).toBe(
      PLAN,
    );
  });

  it("prints every box and no controls", async () => {
    const { page } = await visit(made);
    await page.locator(".panel-moment").first().waitFor();
    await page.emulateMedia({ media: "print" });
    expect(await page.getByRole("button", { name: "Print" }).isVisible()).toBe(false);
    expect(await page.getByRole("checkbox").last().isVisible()).toBe(true);
    // a heading of 12 points and more is read at the panel from where one stands
    const size = await page
      .locator(".panel-do")
      .first()
      .evaluate((each) => getComputedStyle(each).fontSize);
    expect(Number.parseFloat(size)).toBeGreaterThanOrEqual(16);
  });

  it.each([
    ["a phone, dark", { viewport: PHONE, colorScheme: "dark" as const }],
    ["a desk, light", { viewport: DESK, colorScheme: "light" as const }],
  ])("is accessible and fits sideways on %s", async (_, options) => {
    const { page } = await visit({ ...made, moments: made.moments.slice(0, 12) }, options);
    await page.locator(".panel-moment").first().waitFor();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
    expect(await sidewaysOverflow(page)).toBe(0);
  });
});
