import { AxeBuilder } from "@axe-core/playwright";
import type { BrowserContextOptions, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { noBrowser } from "../support/browser.ts";
import { answerFromFixture } from "./fixture/answers.ts";
import { answerMembers, LINK } from "./fixture/members.ts";
import { answerSignIns, SECRETARY } from "./fixture/people.ts";
import { sidewaysOverflow } from "./plan-view.ts";
import { DESK, openHouse, PHONE } from "./visits.ts";

const MEMBERS = "/clubs/vale/members";

describe.skipIf(noBrowser)("the members of a club", () => {
  let house: Awaited<ReturnType<typeof openHouse>>;
  beforeAll(async () => {
    house = await openHouse();
  });
  afterEach(() => house?.leave());
  afterAll(() => house?.close());

  type List = Awaited<ReturnType<typeof answerMembers>>;
  async function visit(where: string, options: BrowserContextOptions = {}, isPlainMember = false) {
    let list: List | undefined;
    const prepare = async (page: Page) => {
      await answerFromFixture(page);
      await answerSignIns(page, { isSignedIn: true });
      list = await answerMembers(page);
      const clubs = [{ ...SECRETARY.clubs[0], member: "it", roles: [], permissions: ["read", "claim"] }];
      if (isPlainMember)
        await page.route("**/api/me", (route) => route.fulfill({ json: { ...SECRETARY, clubs } }));
    };
    const visited = await house.visit(where, { options, prepare });
    return { ...visited, list: list as List };
  }

  it("are found by a word, which the address keeps", async () => {
    const { page, complaints } = await visit(MEMBERS);
    await page.getByText("5 members, 1 junior, 2 can sign in").waitFor();
    await page.getByLabel("Find").fill("branch");
    expect(await page.locator("tbody tr").count()).toBe(3);
    expect(complaints).toEqual([]);
    await page.reload();
    await page.getByText("Ivo Thackray").waitFor();
    expect(await page.locator("tbody tr").count()).toBe(3);
    await page.getByLabel("Find").fill("nobody at all");
    await page.getByText("No member has “nobody at all”").waitFor();
  });

  it("are seen by every member, whose addresses are not, and changed by the secretary alone", async () => {
    const { page } = await visit(MEMBERS, {}, true);
    await page.getByText("Layout owner, timetable clerk").waitFor();
    expect(await page.locator("main").getByText("example.org").count()).toBe(0);
    expect(await page.locator("main").getByRole("link").count()).toBe(0);
  });

  it("get a new one in the list, then an invitation whose link is shown to be passed on", async () => {
    const { page, list, complaints } = await visit(MEMBERS);
    await page.getByRole("link", { name: "New member" }).click();
    await page.getByLabel("Name").fill("Orrin Fell");
    // the initials are taken already
    expect(await page.getByLabel("Code").inputValue()).toBe("of2");
    await page.getByLabel("yard").check();
    await page.getByLabel("Another word").fill("signal box");
    await page.getByLabel("Another word").press("Enter");
    await page.getByLabel("Session marshal").check();
    await page.getByRole("button", { name: "Add the member" }).click();
    await page.getByRole("heading", { name: "Orrin Fell" }).waitFor();
    expect(list.asked[0]?.body).toEqual({
      code: "of2",
      name: "Orrin Fell",
      passedFor: ["yard", "signal box"],
      junior: false,
      roles: ["session marshal"],
      note: "",
    });
    await page.getByLabel("E-mail address").fill("orrin@example.org");
    await page.getByRole("button", { name: "Invite" }).click();
    await page.getByText("Orrin Fell is invited.").waitFor();
    expect(await page.getByLabel("Invitation link").inputValue()).toBe(LINK);
    expect(list.asked[1]).toMatchObject({
      what: "POST of2/invitation",
      body: { email: "orrin@example.org" },
    });
    expect(complaints).toEqual([]);
  });

  it("are changed one version at a time: who was overtaken is told, and sees what it is now", async () => {
    const { page, list } = await visit(`${MEMBERS}/it`);
    await page.getByLabel("Junior").waitFor();
    const ivo = list.kept.find(({ code }) => code === "it");
    if (ivo) Object.assign(ivo, { version: 2, note: "Has the key." });
    await page.getByLabel("panel").check();
    await page.getByRole("button", { name: "Save" }).click();
    await page.getByRole("alert").getByText("has changed since it was read").waitFor();
    expect(await page.getByLabel("panel").isChecked()).toBe(true);
    await page.getByRole("button", { name: "Show what it is now" }).click();
    await expect.poll(() => page.getByLabel("Note").inputValue()).toBe("Has the key.");
    await page.getByLabel("panel").check();
    await page.getByRole("button", { name: "Save" }).click();
    await page.getByText("Saved.").waitFor();
    expect(list.asked.map(({ etag }) => etag)).toEqual(['"1"', '"2"']);
    await page.getByLabel("yard").check();
    await page.getByRole("button", { name: "Save" }).click();
    await expect.poll(() => list.asked.at(-1)?.etag).toBe('"3"');
  });

  it("get a link to a new password from the secretary where they have an account", async () => {
    const { page, list } = await visit(`${MEMBERS}/fd`);
    await page.getByRole("button", { name: "Make a link to a new password" }).click();
    await page.getByLabel("Link to a new password").waitFor();
    expect(await page.getByLabel("Link to a new password").inputValue()).toBe(LINK);
    expect(list.asked.at(-1)).toMatchObject({
      what: "POST fd/invitation",
      body: { email: "ferris@example.org" },
    });
  });

  it("leave the list after a second press, but nobody removes oneself", async () => {
    const { page, list } = await visit(`${MEMBERS}/zt`);
    await page.getByRole("button", { name: "Remove Zoë Thackray" }).click();
    await page.getByRole("button", { name: "Remove Zoë Thackray for good" }).click();
    await page.getByText("4 members").waitFor();
    expect(list.kept.map(({ code }) => code)).not.toContain("zt");
    await page.getByRole("link", { name: "Orla Fennimore" }).click();
    await page.locator("main").getByText("orla@example.org").waitFor();
    expect(await page.getByRole("button", { name: /^Remove/ }).count()).toBe(0);
  });

  for (const colorScheme of ["light", "dark"] as const)
    for (const [name, viewport] of Object.entries({ desk: DESK, phone: PHONE }))
      it(`are shown accessibly and fit sideways: ${name}, ${colorScheme}`, async () => {
        for (const where of [MEMBERS, `${MEMBERS}/it`, "/clubs/vale/new-member"]) {
          const { page, complaints } = await visit(where, { viewport, colorScheme });
          await page.getByRole("button", { name: "Add" }).or(page.locator("tbody")).first().waitFor();
          expect(await sidewaysOverflow(page)).toBe(0);
          const { violations } = await new AxeBuilder({ page }).analyze();
          expect(violations.map(({ id, nodes }) => [id, nodes.map((n) => n.target)])).toEqual([]);
          expect(complaints).toEqual([]);
        }
      });
});
