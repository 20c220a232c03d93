import { AxeBuilder } from "@axe-core/playwright";
import type { BrowserContextOptions } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { noBrowser } from "../support/browser.ts";
import { FixtureNight, LIVE } from "./fixture/live-answers.ts";
import { sidewaysOverflow } from "./plan-view.ts";
import { openHouse, PHONE } from "./visits.ts";

const TABLET = { width: 1024, height: 768 };

describe.skipIf(noBrowser)("the live board", () => {
  let house: Awaited<ReturnType<typeof openHouse>>;

  beforeAll(async () => {
    house = await openHouse();
  });
  afterEach(() => house?.leave());
  afterAll(() => house?.close());

  async function visit(options: BrowserContextOptions = {}) {
    const fixture = new FixtureNight();
    const visited = await house.visit(LIVE, {
      options: { viewport: TABLET, ...options },
      prepare: async (page) => {
        await fixture.answer(page);
      },
    });
    await visited.page.getByRole("timer").waitFor();
    return { ...visited, fixture };
  }

  it("shows the layout clock and what comes next, by the timetable and as expected", async () => {
    const { page, complaints } = await visit();
    expect(await page.getByRole("timer").textContent()).toMatch(/^09:2\d:\d\d$/);
    const goods = page.locator(".train-row", { hasText: "Goods" });
    expect(await goods.textContent()).toContain("09:32");
    expect(await goods.textContent()).toContain("4 min late");
    expect(await goods.textContent()).toContain("address 9");
    const railcar = page.locator(".train-row", { hasText: "Branch railcar" });
    expect(await railcar.textContent()).toContain("No driver");
    expect(complaints).toEqual([]);
  });

  it("moves the clock by itself, and not while it is paused", async () => {
    const { page } = await visit();
    const clock = page.getByRole("timer");
    const first = await clock.textContent();
    await page.waitForFunction((was) => document.querySelector("[role=timer]")?.textContent !== was, first);
    await page.getByRole("button", { name: "Pause" }).click();
    await page.getByRole("button", { name: "Start", exact: true }).waitFor();
    const paused = await clock.textContent();
    // longer than its step of a second
    await page.waitForTimeout(1_500);
    expect(await clock.textContent()).toBe(paused);
  });

  it("sends one change a press, with its version and a key of its own", async () => {
    const { page, fixture } = await visit();
    await page.getByRole("button", { name: "Departed: train 12" }).dblclick();
    await page.getByText("Train 12: departed.").waitFor();
    expect(fixture.asked).toHaveLength(1);
    expect(fixture.asked[0]).toMatchObject({
      method: "PUT",
      path: "trains/late/12",
      body: { state: "running" },
      etag: '"3"',
    });
    await page.getByRole("button", { name: "Departed: train 14" }).click();
    await page.getByText("Train 14: departed.").waitFor();
    const [first, second] = fixture.asked.map(({ key }) => key);
    expect(first).toMatch(/^[0-9a-f]{32}$/);
    expect(second).not.toBe(first);
  });

  it("undoes a report, going by the version that it made", async () => {
    const { page, fixture } = await visit();
    await page.getByRole("button", { name: "Departed: train 12" }).click();
    await page.getByRole("button", { name: "Arrived: train 12" }).waitFor();
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByText("Train 12 is as it was.").waitFor();
    expect(fixture.asked[1]).toMatchObject({ body: { state: "waiting" }, etag: '"4"' });
  });

  it("presses again with the same key where no answer came, so that nothing is done twice", async () => {
    const { page, fixture } = await visit();
    fixture.next = "break off";
    await page.getByRole("button", { name: /Caspar/ }).click();
    await page.getByText("The service does not answer.").waitFor();
    await page.getByRole("button", { name: /Caspar/ }).click();
    await page.getByText("Caspar Thornbeck is booked on.").waitFor();
    const [first, second] = fixture.asked;
    expect(first?.key).toMatch(/^[0-9a-f]{32}$/);
    expect(second).toEqual(first);
  });

  it("says what another marshal did meanwhile and shows the board as it is now", async () => {
    const { page, fixture } = await visit();
    fixture.next = "refuse";
    const before = fixture.reads;
    await page.getByRole("button", { name: "Departed: train 12" }).click();
    await page.getByText("Somebody else changed train 12 meanwhile.").waitFor();
    await expect.poll(() => fixture.reads).toBeGreaterThan(before);
    expect(await page.getByRole("button", { name: "Undo" }).count()).toBe(0);
  });

  it("offers the driver who needs a handset next, in one press", async () => {
    const { page, fixture } = await visit();
    await page.getByRole("button", { name: "Out: handset R2" }).click();
    await page.getByText("Handset R2 is out to Caspar Thornbeck.").waitFor();
    expect(fixture.asked[0]).toMatchObject({
      path: "handset-desk",
      body: { handset: "R2", to: "out", member: "ct" },
    });
  });

  it("finds another locomotive for one that failed, and says why others do not suit", async () => {
    const { page, fixture } = await visit();
    await page.getByRole("button", { name: "More for train 12" }).click();
    await page.getByRole("button", { name: "T9 failed" }).click();
    await page.getByLabel(/What is wrong with T9/).fill("Slips on the bank");
    await page.getByText("1 that do not suit").click();
    await page.getByText("B1 has no decoder, and the main line runs digital.").waitFor();
    await page.getByRole("button", { name: "Take T4" }).click();
    await page.getByText("Train 12 runs with T4 instead of T9.").waitFor();
    expect(fixture.asked[0]).toMatchObject({
      path: "trains/late/12/replacements",
      body: { locomotive: "T9", replacement: "T4", note: "Slips on the bank" },
    });
  });

  it("notes a trip with its district and amps", async () => {
    const { page, fixture } = await visit();
    await page.getByText("Note a trip").click();
    await page.getByLabel("District").selectOption("East");
    await page.getByLabel("Measured, A").fill("3.15");
    await page.getByRole("button", { name: "Note it" }).click();
    await page.getByText("The trip of East is noted.").waitFor();
    expect(fixture.asked[0]).toMatchObject({ path: "trips", body: { district: "East", measuredMa: 3_150 } });
  });

  it("says that it lost the service, keeps what it showed, and catches up", async () => {
    const { page, fixture } = await visit();
    fixture.isReachable = false;
    await page.getByRole("button", { name: /Caspar/ }).click();
    await page.getByText("The connection is lost").waitFor();
    expect(await page.locator(".train-row").count()).toBeGreaterThan(0);
    fixture.isReachable = true;
    await page.getByRole("button", { name: "Try now" }).click();
    await page.getByText("The connection is lost").waitFor({ state: "detached" });
  });

  for (const colorScheme of ["light", "dark"] as const)
    for (const [name, viewport] of Object.entries({ tablet: TABLET, phone: PHONE }))
      it(`is accessible, fits sideways and has buttons fit for a thumb: ${name}, ${colorScheme}`, async () => {
        const { page, complaints } = await visit({ viewport, colorScheme });
        await page.getByRole("button", { name: "More for train 12" }).click();
        await page.getByRole("button", { name: "T9 failed" }).click();
        await page.getByRole("button", { name: "Take T4" }).waitFor();
        await page.getByText("Note a trip").click();
        expect(await sidewaysOverflow(page)).toBe(0);
        // WCAG 2.2, success criterion 2.5.5: 44 CSS px either way
        const small = await page.locator("main .live button, main .live summary").evaluateAll((all) =>
          all
            .map((button) => ({ box: button.getBoundingClientRect(), text: button.textContent }))
            .filter(({ box }) => box.width > 0 && (box.width < 44 || box.height < 44))
            .map(({ text }) => text),
        );
        expect(small).toEqual([]);
        const { violations } = await new AxeBuilder({ page }).analyze();
        expect(violations.map(({ id, nodes }) => [id, nodes.map((n) => n.target)])).toEqual([]);
        expect(complaints).toEqual([]);
      });
});
