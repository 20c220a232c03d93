import { mkdirSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { AxeBuilder } from "@axe-core/playwright";
import type { BrowserContextOptions, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { noBrowser } from "../support/browser.ts";
import { DESK_PAGE, EVENING, FixtureDesk } from "./fixture/desk-answers.ts";
import { sidewaysOverflow } from "./plan-view.ts";
import { DESK, openHouse, PHONE } from "./visits.ts";

describe.skipIf(noBrowser)("a night at the desk", () => {
  let house: Awaited<ReturnType<typeof openHouse>>;

  beforeAll(async () => {
    house = await openHouse();
  });
  afterEach(() => house?.leave());
  afterAll(() => house?.close());

  async function visit(
    how: ConstructorParameters<typeof FixtureDesk>[0] = {},
    options: BrowserContextOptions = {},
    where = DESK_PAGE,
  ) {
    const fixture = new FixtureDesk(how);
    const visited = await house.visit(where, { options, prepare: (page) => fixture.answer(page) });
    await visited.page.locator("main h2").first().waitFor();
    return { ...visited, fixture };
  }

  const headline = (page: Page) => page.locator(".headline").textContent();

  it("says that a draft runs, opens it in one press, and has its link to copy", async () => {
    const { page, fixture, complaints } = await visit();
    expect(await headline(page)).toContain("This night runs.");
    await page.getByRole("button", { name: "Open for claims" }).click();
    await page.getByText("The night is open: members may claim.").waitFor();
    expect(fixture.asked[0]).toMatchObject({ path: "booking/moves", body: { to: "open" } });
    expect(await page.getByLabel("For the members").inputValue()).toBe(
      `${house.address}/clubs/vale/crew/spring`,
    );
    await page.getByRole("button", { name: "Copy the link" }).click();
    await page.getByText(/^(Copied|Selected)/).waitFor();
    expect(complaints).toEqual([]);
  });

  it("shows what stops a draft, and opens it all the same only with a reason", async () => {
    const { page, fixture } = await visit({ isStopped: true });
    expect(await headline(page)).toMatch(/\d+ things stop this night\./);
    expect(await page.locator(".block li").count()).toBeGreaterThan(0);
    expect(await page.getByRole("button", { name: "Open for claims" }).count()).toBe(0);
    await page.getByRole("button", { name: "Open all the same" }).click();
    await page.getByLabel("Why").fill("The breaker is changed on Tuesday.");
    await page.locator("form").getByRole("button", { name: "Open all the same" }).click();
    await page.getByText("Opened although something stops it: The breaker is changed on Tuesday.").waitFor();
    expect(fixture.asked[0]?.body).toEqual({ to: "open", reason: "The breaker is changed on Tuesday." });
  });

  it("asks for a reason before it cancels", async () => {
    const { page, fixture } = await visit({ state: "open" });
    await page.getByRole("button", { name: "Cancel the night" }).click();
    expect(fixture.asked).toHaveLength(0);
    await page.getByLabel("Why").fill("The heating is broken.");
    await page.locator("form").getByRole("button", { name: "Cancel the night" }).click();
    await page.getByText("Cancelled because: The heating is broken.").waitFor();
  });

  it("lists trains without a driver and gives one to somebody, with a way back", async () => {
    const { page, fixture } = await visit({ state: "open" });
    expect(await headline(page)).toContain("3 of 5 trains have no driver yet.");
    await page.getByLabel("Who has Train 14").selectOption({ label: "Caspar Thornbeck" });
    await page.getByText("Train 14 is Caspar Thornbeck's.").waitFor();
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByText("Train 14 has nobody now.").waitFor();
    expect(fixture.asked.map(({ path, body }) => [path, body])).toEqual([
      ["assignments", { train: "14", member: "ct" }],
      ["assignments", { train: "14", member: null }],
    ]);
  });

  it("says of each member whether they are passed for a train", async () => {
    const { page } = await visit({ state: "open" });
    const options = await page.getByLabel("Who has Train 7").locator("option").allTextContents();
    expect(options).toContain("Caspar Thornbeck (not passed for express)");
  });

  it("names who has claimed nothing, and books them as coming", async () => {
    const { page, fixture } = await visit({ state: "open" });
    await page.getByRole("heading", { name: "Nothing claimed yet: 1" }).waitFor();
    await page.getByLabel(/will be there: Winnow/).check();
    await page.getByText("Winnow Harcastle will be there.").waitFor();
    expect(fixture.asked[0]).toMatchObject({
      path: "booking/coming",
      body: { member: "wh", coming: true },
    });
  });

  it("keeps notes and the rule on second trains, by the club room's clock wherever one sits", async () => {
    const { page, fixture } = await visit({ state: "open" }, { timezoneId: "Asia/Kolkata" });
    await page.getByLabel("Note to all").fill("Bring a mug.");
    await page.getByLabel("A second train from").fill("2027-03-20T19:00");
    await page.getByRole("button", { name: "Save the notes" }).click();
    await page.getByText("The notes are saved.").waitFor();
    expect(fixture.asked[0]?.body).toEqual({
      noteToAll: "Bring a mug.",
      venueNote: "",
      secondClaimFrom: "2027-03-20T19:00:00.000Z",
      attending: [],
    });
  });

  it("adds a standing duty with a code of its own", async () => {
    const { page, fixture } = await visit({ state: "open" });
    await page.getByText("Standing duties: 1").click();
    await page.getByLabel("A duty").fill("Signals at Oakwater");
    await page.getByLabel("Place").selectOption("oakwater");
    await page.getByRole("button", { name: "Add it" }).click();
    await page.getByText("Signals at Oakwater is a duty of Late turn.").waitFor();
    expect(fixture.asked[0]).toMatchObject({
      path: "duties",
      body: { code: "signals-at-oakwater", kind: "signalling", place: "oakwater" },
    });
  });

  it("is for each member an evening: what next, how far off, with what, from whom and to whom", async () => {
    const { page, complaints } = await visit({ state: "open" }, { viewport: PHONE }, EVENING);
    const next = await page.locator(".next-item").textContent();
    for (const fact of ["Train 5", "19:04", "08:16", "address 7", "R1", "Caspar Thornbeck", "train 21"])
      expect(next).toContain(fact);
    await page.getByText("Side door; park behind the seed store.").waitFor();
    expect(complaints).toEqual([]);
  });

  it("counts the minutes to one's train by the room's clock", async () => {
    const fixture = new FixtureDesk({ state: "open" });
    const { page } = await house.visit(EVENING, {
      prepare: async (page) => {
        await fixture.answer(page);
        await page.clock.setFixedTime(new Date("2027-03-27T18:52:30Z"));
      },
    });
    await page.getByText("in 11 min").waitFor();
    await page.clock.setFixedTime(new Date("2027-03-27T19:30:00Z"));
    await page.getByText("You have nothing more to do tonight.").waitFor();
  });

  for (const colorScheme of ["light", "dark"] as const)
    for (const [name, viewport] of Object.entries({ phone: PHONE, desk: DESK }))
      it(`is accessible and fits sideways: ${name}, ${colorScheme}`, async () => {
        const folder = process.env.PICTURES ?? path.join(tmpdir(), "running-foreman-pictures");
        mkdirSync(folder, { recursive: true });
        const pages = [
          ["desk-draft", { isStopped: true }, DESK_PAGE],
          ["desk-open", { state: "open" }, DESK_PAGE],
          ["evening", { state: "open" }, EVENING],
        ] as const;
        for (const [what, how, where] of pages) {
          const { page, complaints } = await visit(how, { viewport, colorScheme }, where);
          await page.screenshot({
            path: path.join(folder, `${what}-${name}-${colorScheme}.png`),
            fullPage: true,
          });
          for (const fold of await page.getByText(/^(Standing duties|\d with something)/).all())
            await fold.click();
          expect(await sidewaysOverflow(page)).toBe(0);
          const { violations } = await new AxeBuilder({ page }).analyze();
          expect(violations.map(({ id, nodes }) => [id, nodes.map((n) => n.target)])).toEqual([]);
          expect(complaints).toEqual([]);
        }
      });
});
