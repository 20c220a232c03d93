import { mkdirSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { demoClub } from "../../seed/index.ts";
import { CLEAN } from "../../seed/sessions.ts";
import { noBrowser } from "../support/browser.ts";
import { appOn } from "../support/test-app.ts";
import { byHeader, counting, openClub, type PEOPLE } from "./night-people.ts";
import { sidewaysOverflow } from "./plan-view.ts";
import { CLIENT, DESK, PHONE } from "./visits.ts";

const CLUB = `/clubs/${demoClub.code}`;
const CREW = `${CLUB}/crew/${CLEAN.session}`;
const LIVE = `${CLUB}/live/${CLEAN.session}`;
const EVENING = `${CLUB}/my-evening/${CLEAN.session}`;

describe.skipIf(noBrowser)("a night of the demo club, on a real database,", () => {
  let house: Awaited<ReturnType<typeof openClub>>;

  beforeAll(async () => {
    house = await openClub();
  });
  afterEach(() => house?.leave());
  afterAll(() => house?.close());

  const row = (page: Page, train: string) =>
    page.locator(".crew-row").filter({ has: page.locator(`strong:text-is("Train ${train}")`) });
  const said = (page: Page, text: string | RegExp) => page.locator(".said").getByText(text).waitFor();

  it("is copied, found to run, opened and its link copied by the secretary, in at most eight actions", async () => {
    const { page, complaints } = await house.as("secretary", CLUB);
    const hand = counting();
    await hand.press(page.getByRole("link", { name: "A new night" }));
    await hand.press(page.getByRole("button", { name: "Make this night" }));
    await page.getByText("This night runs.").waitFor();
    await hand.press(page.getByRole("button", { name: "Open for claims" }));
    await said(page, "The night is open");
    await hand.press(page.getByRole("button", { name: "Copy the link" }));
    await page.getByText(/^(Copied|Selected)/).waitFor();
    expect(hand.actions()).toBeLessThanOrEqual(8);
    const link = await page.getByLabel("For the members").inputValue();
    expect(link).toBe(`${house.address}${CLUB}/crew/2027-04-03`);
    // what a page that is left was still waiting for
    expect(complaints.filter((complaint) => !complaint.endsWith("net::ERR_ABORTED"))).toEqual([]);
  });

  it("is not opened by a press while something stops it: its findings are shown", async () => {
    const { page } = await house.as("secretary", `${CLUB}/nights/rehearsal`);
    await page.getByText(/\d+ things stop this night\./).waitFor();
    expect(await page.locator(".block li").count()).toBeGreaterThan(3);
    expect(await page.getByRole("button", { name: "Open for claims" }).count()).toBe(0);
  });

  it("opens, and a member claims a train within four taps of the link, with a fitting handset", async () => {
    const desk = await house.as("secretary", `${CLUB}/nights/${CLEAN.session}`);
    await desk.page.getByRole("button", { name: "Open for claims" }).click();
    await said(desk.page, "The night is open");
    const { page, complaints } = await house.as("rufio", CREW);
    await page.getByRole("heading", { name: /Free for you/ }).waitFor();
    const hand = counting();
    await hand.press(page.getByRole("button", { name: "Claim Train 1A01" }));
    await said(page, /Train 1A01 is yours, with handset \S+\./);
    expect(hand.actions()).toBeLessThanOrEqual(4);
    await page.getByRole("button", { name: "Give back Train 1A01" }).waitFor();
    const mine = row(page, "1A01");
    await mine.getByText("19:02").waitFor();
    expect(await mine.textContent()).toMatch(/06:50.*locomotive 4601, address/);
    // the desk hears of it
    await desk.page.getByText("101 of 102 trains have no driver yet.").waitFor();
    expect(complaints).toEqual([]);
    expect(desk.complaints).toEqual([]);
  });

  it("shows the same train of the other crew as free: claiming one is not claiming both", async () => {
    const { page } = await house.as("rufio", `${CREW}/second`);
    await page.getByRole("button", { name: "Claim Train 1A01" }).waitFor();
  });

  it("gives a train that two want to one, says so to the other at once, and to whoever waits when it is given back", async () => {
    const [first, second] = [await house.as("rufio", CREW), await house.as("viveca", CREW)];
    const button = "Claim Train 2S02";
    for (const { page } of [first, second]) await page.getByRole("button", { name: button }).waitFor();
    await first.page.getByRole("button", { name: button }).click();
    await said(first.page, /Train 2S02 is yours/);
    // without a reload, and in its place
    const taken = row(second.page, "2S02");
    await taken.getByText("Taken by Rufio Larchwater.").waitFor();
    await second.page.getByRole("button", { name: "Queue for Train 2S02" }).click();
    await said(second.page, /You wait for train 2S02, first in the queue/);
    await first.page.getByRole("button", { name: "Give back Train 2S02" }).click();
    await said(first.page, "Train 2S02 went to Viveca Nettlebourne, who waited for it.");
    await second.page.getByRole("button", { name: "Give back Train 2S02" }).waitFor();
    expect([first.complaints, second.complaints]).toEqual([[], []]);
  });

  it("says why to whoever presses after the train has gone, and shows who has it", async () => {
    const { page } = await house.as("viveca", CREW);
    await page.getByRole("button", { name: "Claim Train 1A05" }).waitFor();
    // nothing is heard of it: as on a phone that was in a pocket
    await page.route("**/board", (route) => route.abort());
    const path = `/api${CLUB}/sessions/${CLEAN.session}/slots/first/claims`;
    await house.service.request
      .post(path)
      .set("x-test-member", "rl")
      .set("idempotency-key", "journey-1A05")
      .send({ train: "1A05" })
      .expect(201);
    await page.unroute("**/board");
    await page.getByRole("button", { name: "Claim Train 1A05" }).click();
    const gone = row(page, "1A05");
    await gone.getByRole("alert").waitFor();
    await gone.getByText("Taken by Rufio Larchwater.").waitFor();
    await page.getByRole("button", { name: "Queue for Train 1A05" }).waitFor();
  });

  it("gives a train back and takes it again", async () => {
    const { page } = await house.as("viveca", CREW);
    await page.getByRole("button", { name: "Give back Train 2S02" }).click();
    await said(page, "Train 2S02 is given back.");
    await page.getByRole("button", { name: "Undo" }).click();
    await said(page, /Train 2S02 is yours/);
  });

  it("trades two trains once the other agrees", async () => {
    const first = await house.as("rufio", CREW);
    await first.page.getByRole("button", { name: "Swap Train 1A01" }).click();
    const form = row(first.page, "1A01").locator("form");
    const wanted = form.locator("option", { hasText: "2S02" });
    await form.locator("select").selectOption((await wanted.getAttribute("value")) ?? "");
    await form.getByRole("button", { name: "Offer the swap" }).click();
    await said(first.page, "Viveca Nettlebourne is asked.");
    const second = await house.as("viveca", CREW);
    await said(second.page, "Rufio Larchwater offers you train 1A01 for your train 2S02.");
    await second.page.getByRole("button", { name: "Swap", exact: true }).click();
    await said(second.page, "The swap is made.");
    await first.page.getByRole("button", { name: "Give back Train 2S02" }).waitFor();
    await second.page.getByRole("button", { name: "Give back Train 1A01" }).waitFor();
  });

  it("is locked by the secretary, who gives a train that has nobody to somebody", async () => {
    const { page, complaints } = await house.as("secretary", `${CLUB}/nights/${CLEAN.session}`);
    await page.getByLabel("Who has Train 3G02").first().selectOption("jp");
    await said(page, "Train 3G02 is Jorvald Pinnerton's.");
    await page.getByRole("button", { name: "Lock" }).click();
    await said(page, "The night is locked");
    expect(complaints).toEqual([]);
  });

  it("is run from the marshal's tablet: booking on, handsets, clock, departures, a failure, a trip", async () => {
    const { page, complaints } = await house.as("marshal", LIVE);
    await page.getByRole("button", { name: /Rufio Larchwater/ }).click();
    await said(page, "Rufio Larchwater is booked on.");
    await page.getByRole("button", { name: "Start", exact: true }).click();
    await said(page, "The layout clock runs.");
    await page.getByText("Running", { exact: true }).first().waitFor();
    const handset = page.locator(".handset", { hasText: /Jorvald Pinnerton \(train 3G02\)/ }).first();
    await handset.getByRole("button", { name: /^Out/ }).click();
    await said(page, /is out to Jorvald Pinnerton\./);
    await page.getByRole("button", { name: "Departed: train 3G02" }).click();
    await page.getByRole("button", { name: "Arrived: train 3G02" }).waitFor();
    await page.getByRole("button", { name: "More for train 1A01" }).click();
    await page.getByRole("button", { name: "+5" }).first().click();
    await said(page, "Train 1A01 is 5 min late.");
    await page.getByRole("button", { name: "4601 failed" }).click();
    await page.getByLabel("What is wrong with 4601").fill("Squeals and stops");
    await page
      .getByRole("button", { name: /^Take / })
      .first()
      .click();
    await said(page, /Train 1A01 runs with \S+ instead of 4601\./);
    await page.getByText("Note a trip").click();
    await page.getByLabel("District").selectOption({ index: 1 });
    await page.getByLabel("Measured, A").fill("3.2");
    await page.getByRole("button", { name: "Note it" }).click();
    await page.locator(".incidents li", { hasText: /3\.20? A/ }).waitFor();
    expect(complaints).toEqual([]);
  });

  it("shows a member the minutes to their train by the layout clock, and stays right in two windows", async () => {
    const phone = await house.as("viveca", EVENING);
    const next = phone.page.locator(".next-item");
    await next.getByText("Train 1A01").waitFor();
    await next.getByText("5 min late").waitFor();
    const tablet = await house.as("marshal", LIVE);
    await tablet.page.getByRole("button", { name: "Pause" }).click();
    await next.getByText("while the layout clock is paused").waitFor();
    expect(phone.complaints).toEqual([]);
  });

  for (const colorScheme of ["light", "dark"] as const)
    for (const [name, viewport] of Object.entries({ phone: PHONE, desk: DESK }))
      it(`is accessible, fits sideways and is quiet on every page: ${name}, ${colorScheme}`, async () => {
        const folder = process.env.PICTURES ?? path.join(tmpdir(), "running-foreman-pictures");
        mkdirSync(folder, { recursive: true });
        const pages: [string, keyof typeof PEOPLE, string][] = [
          ["nights", "secretary", CLUB],
          ["crew", "viveca", CREW],
          ["evening", "viveca", EVENING],
          ["desk", "secretary", `${CLUB}/nights/${CLEAN.session}`],
          ["live", "marshal", LIVE],
          ["new-night", "secretary", `${CLUB}/new-night`],
        ];
        for (const [what, who, where] of pages) {
          const { page, complaints } = await house.as(who, where, { viewport, colorScheme });
          await page.locator("main :is(h2, fieldset)").first().waitFor();
          await page.screenshot({ path: path.join(folder, `night-${what}-${name}-${colorScheme}.png`) });
          expect([what, await sidewaysOverflow(page)]).toEqual([what, 0]);
          const { violations } = await new AxeBuilder({ page }).analyze();
          expect([what, violations.map(({ id, nodes }) => [id, nodes.map((n) => n.target)])]).toEqual([
            what,
            [],
          ]);
          expect([what, complaints]).toEqual([what, []]);
        }
      });

  it("goes on as it was after the service was stopped and started again in the middle", async () => {
    const { page } = await house.as("marshal", LIVE);
    await page.getByRole("button", { name: "Start", exact: true }).click();
    await said(page, "The layout clock runs.");
    await page.getByRole("button", { name: "Arrived: train 3G02" }).waitFor();
    const port = Number(new URL(house.address).port);
    const before = await page.getByRole("timer").textContent();
    await house.service.app.close();
    await page.getByText("The connection is lost").waitFor();
    const again = await appOn(house.service.connection, { clientDir: CLIENT, authenticate: byHeader });
    try {
      await again.app.listen({ port, host: "127.0.0.1" });
      await page.reload();
      await page.getByRole("button", { name: "Pause" }).click();
      await said(page, "The layout clock is paused.");
      await page.getByRole("button", { name: "Arrived: train 3G02" }).waitFor();
      const after = (await page.getByRole("timer").textContent()) ?? "";
      expect(after > (before ?? "")).toBe(true);
    } finally {
      await house.leave();
      await again.close();
    }
  });
});
