import { mkdirSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import type { BrowserContextOptions, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import type { Claim } from "../../shared/claims.ts";
import { noBrowser } from "../support/browser.ts";
import { CREW, FixtureBoard } from "./fixture/crew-answers.ts";
import { ME, OTHER } from "./fixture/crew-board.ts";
import { sidewaysOverflow } from "./plan-view.ts";
import { DESK, openHouse, PHONE } from "./visits.ts";

const NARROWEST = { width: 320, height: 640 };

describe.skipIf(noBrowser)("the claim board", () => {
  let house: Awaited<ReturnType<typeof openHouse>>;

  beforeAll(async () => {
    house = await openHouse();
  });
  afterEach(() => house?.leave());
  afterAll(() => house?.close());

  async function visit(options: BrowserContextOptions = {}) {
    const fixture = new FixtureBoard();
    const visited = await house.visit(CREW, {
      options: { viewport: PHONE, hasTouch: true, ...options },
      prepare: (page) => fixture.answer(page),
    });
    await visited.page.getByRole("heading", { name: /Your evening/ }).waitFor();
    return { ...visited, fixture };
  }

  const row = (page: Page, text: string) => page.locator(".crew-row", { hasText: text });

  it("shows one's own evening on top: when by both clocks, where, with which locomotive and handset", async () => {
    const { page, complaints } = await visit();
    const mine = await row(page, "Early goods").textContent();
    for (const fact of ["19:04", "08:16", "Oakwater, road 1", "locomotive T5, address 7", "handset R1"])
      expect(mine).toContain(fact);
    const top = await page.locator("main h2").allTextContents();
    expect(top.slice(0, 2)).toEqual(["Your evening: 1 train", "Free for you: 2"]);
    expect(complaints).toEqual([]);
  });

  it("lists what one may have, soonest first, with the walk to it", async () => {
    const { page } = await visit();
    const free = page.locator("section", { hasText: "Free for you: 2" }).locator(".crew-row");
    expect(await free.locator(".crew-when b").allTextContents()).toEqual(["19:16", "19:40"]);
    expect(await free.first().textContent()).toContain("2 min walk from Millbeck");
  });

  it("gives a train in one tap with the fitting handset, and takes it back with another", async () => {
    const { page, fixture } = await visit();
    await page.getByRole("button", { name: "Claim Train 12" }).tap();
    await page.getByText("Train 12 is yours, with handset R2.").waitFor();
    expect(fixture.asked[0]).toMatchObject({ path: "claims", body: { train: "12", handset: "R2" } });
    await page.getByRole("heading", { name: "Your evening: 2 trains" }).waitFor();
    await page.getByRole("button", { name: "Undo" }).tap();
    await page.getByText("Train 12 is given back.").waitFor();
    await page.getByRole("heading", { name: "Your evening: 1 train" }).waitFor();
    await page.getByRole("button", { name: "Claim Train 12" }).waitFor();
  });

  it("lets one choose another handset first", async () => {
    const { page, fixture } = await visit();
    await row(page, "Stopping passenger").getByLabel("Handset").selectOption("R3");
    await page.getByRole("button", { name: "Claim Train 12" }).tap();
    await page.getByText("Train 12 is yours, with handset R3.").waitFor();
    expect(fixture.asked[0]?.body).toEqual({ train: "12", handset: "R3" });
  });

  it("claims once, however often one taps", async () => {
    const { page, fixture } = await visit();
    await page.getByRole("button", { name: "Claim Train 12" }).dblclick();
    await page.getByText("Train 12 is yours").waitFor();
    expect(fixture.asked).toHaveLength(1);
    expect(fixture.asked[0]?.key).toMatch(/^[0-9a-f]{32}$/);
  });

  it("says in its place that a train was taken meanwhile, and offers the queue", async () => {
    const { page, fixture } = await visit();
    const claim = page.getByRole("button", { name: "Claim Train 12" });
    await claim.waitFor();
    fixture.take("12");
    // at once: when the page next reads, the button is gone
    await claim.evaluate((button) => (button as HTMLElement).click());
    const taken = row(page, "Stopping passenger");
    await taken.getByText("Caspar Thornbeck was a moment faster.").waitFor();
    await page.getByRole("button", { name: "Queue for Train 12" }).tap();
    await page.getByText("You wait for train 12, first in the queue.").waitFor();
    await taken.getByText("You are first of 1 in the queue").waitFor();
    await page.getByRole("button", { name: "Leave the queue for Train 12" }).tap();
    await page.getByText("You no longer wait for train 12.").waitFor();
  });

  it("gives back with a way to take it again", async () => {
    const { page, fixture } = await visit();
    await page.getByRole("button", { name: "Give back Train 5" }).tap();
    await page.getByText("Train 5 is given back.").waitFor();
    await page.getByRole("heading", { name: "Your evening: nothing yet" }).waitFor();
    await page.getByRole("button", { name: "Undo" }).tap();
    await page.getByText("Train 5 is yours, with handset R1.").waitFor();
    expect(fixture.asked.map(({ method }) => method)).toEqual(["DELETE", "POST"]);
  });

  it("says of each train that one may not have why, in a sentence, folded away", async () => {
    const { page } = await visit();
    const sentence = page.getByText("Train 7 asks for express, which you are not passed for.");
    expect(await sentence.isVisible()).toBe(false);
    await page.getByText("Free, but not for you: 2").tap();
    expect(await sentence.isVisible()).toBe(true);
    expect(await page.getByText("You drive train 5 then, from 19:04 to 19:12.").isVisible()).toBe(true);
  });

  it("offers a swap, and asks before it takes one", async () => {
    const { page, fixture } = await visit();
    await page.getByRole("button", { name: "Swap Train 5" }).tap();
    await page.locator(".crew-row-mine").getByLabel("For", { exact: false }).selectOption({ index: 1 });
    await page.getByRole("button", { name: "Offer the swap" }).tap();
    await page.getByText("Caspar Thornbeck is asked.").waitFor();
    const [gives, wants] = [fixture.board.evening[0]?.claim, fixture.board.trains[2]?.claim];
    expect(fixture.asked[0]?.body).toMatchObject({ gives: gives?.id, wants: wants?.id });
    const end = (claim: Claim | null | undefined) => ({
      claim: claim?.id ?? "",
      slot: "late",
      kind: "train" as const,
      code: claim?.code ?? "",
    });
    const id = "018f0000-0000-7000-8000-00000000aaaa";
    fixture.offer({
      id,
      from: OTHER,
      to: ME,
      gives: end(wants),
      wants: end(gives),
      message: "I would like to be home early.",
      offeredAt: "2027-03-20T10:00:00.000Z",
    });
    await page.reload();
    await page.getByText("Caspar Thornbeck offers you train 9 for your train 5.").waitFor();
    await page.getByRole("button", { name: "Swap", exact: true }).tap();
    await page.getByText("The swap is made.").waitFor();
    expect(fixture.asked.at(-1)?.path).toBe(`swaps/${id}/accept`);
  });

  for (const colorScheme of ["light", "dark"] as const)
    for (const [name, viewport] of Object.entries({ phone: PHONE, narrowest: NARROWEST, desk: DESK }))
      it(`is accessible, fits sideways and has room for a thumb: ${name}, ${colorScheme}`, async () => {
        const { page, complaints } = await visit({ viewport, colorScheme });
        await page.getByRole("button", { name: "Swap Train 5" }).click();
        for (const fold of await page.locator("summary").all()) await fold.click();
        await page.getByRole("button", { name: "Claim Train 14" }).click();
        await page.getByText("Train 14 is yours").waitFor();
        expect(await sidewaysOverflow(page)).toBe(0);
        const { violations } = await new AxeBuilder({ page }).analyze();
        expect(violations.map(({ id, nodes }) => [id, nodes.map((n) => n.target)])).toEqual([]);
        // WCAG 2.2, success criterion 2.5.5: 44 CSS px either way
        const small = await page.locator("main button, main select, main summary").evaluateAll((all) =>
          all
            .map((one) => ({ box: one.getBoundingClientRect(), text: one.textContent }))
            .filter(({ box }) => box.width > 0 && (box.width < 44 || box.height < 44))
            .map(({ text }) => text),
        );
        expect(small).toEqual([]);
        expect(complaints).toEqual([]);
        const folder = process.env.PICTURES ?? path.join(tmpdir(), "running-foreman-pictures");
        mkdirSync(folder, { recursive: true });
        await page.screenshot({ path: path.join(folder, `crew-${name}-${colorScheme}.png`) });
      });
});
