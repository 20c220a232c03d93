import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { demoDocument } from "../../seed/index.ts";
import { noBrowser } from "../support/browser.ts";
import { sidewaysOverflow } from "./plan-view.ts";
import { copied, openRealHouse, PASSWORDS, pathOf, signIn } from "./real-people.ts";
import { DESK, PHONE } from "./visits.ts";

const ORLA = "orla@example.org";
const IVO = "ivo@example.org";
const CLUB = "/clubs/oakwater-vale";

/** One life of a new installation, from its first link to an erased account; each test goes on where the last ended. */
describe.skipIf(noBrowser)("the people of a new installation, on the service as it is,", () => {
  let house: Awaited<ReturnType<typeof openRealHouse>>;
  let orla: Page;
  let ivo: Page;
  let complaintsOfOrla: () => readonly string[];
  let complaintsOfIvo: () => readonly string[];
  let invitation: string;

  beforeAll(async () => {
    house = await openRealHouse();
  });
  afterAll(async () => {
    await house?.leave();
    await house?.close();
  });

  it("begin with the first secretary, who makes the club and brings its railway", async () => {
    const entered = await house.enter(await house.firstLink());
    orla = entered.page;
    complaintsOfOrla = entered.complaints;
    await orla.getByRole("heading", { name: "The first account of this service" }).waitFor();
    await orla.getByLabel("Your name").fill("Orla Fennimore");
    await orla.getByLabel("E-mail address").fill(ORLA);
    await orla.getByLabel("Password").fill("password1");
    await orla.getByRole("button", { name: "Make the account" }).click();
    await orla.locator(".field-fault").waitFor();
    await orla.getByLabel("Password").fill(PASSWORDS.orla);
    await orla.getByRole("button", { name: "Make the account" }).click();
    await orla.getByRole("heading", { name: "Welcome" }).waitFor();
    await orla.getByLabel("Name of the club").fill("Oakwater Vale");
    await orla.getByLabel("Time zone").selectOption("Europe/London");
    await orla.getByRole("button", { name: "Make the club" }).click();
    const { layout, roster, handsets, timetables } = demoDocument;
    await orla.getByLabel("Choose a document").setInputFiles({
      name: "railway.json",
      mimeType: "application/json",
      buffer: Buffer.from(JSON.stringify({ layout, roster, handsets, timetables })),
    });
    await orla.getByRole("button", { name: "Bring it in" }).click();
    await orla.getByRole("link", { name: "A new night" }).waitFor();
    expect(new URL(orla.url()).pathname).toBe(CLUB);
  });

  it("find the link used up afterwards, whoever has it", async () => {
    const { page } = await house.enter("/links/used-up-or-never-made");
    await page.getByRole("heading", { name: "This link cannot be used" }).waitFor();
  });

  it("are invited by the secretary, on whose list they appear as soon as they join", async () => {
    await orla.getByRole("link", { name: "Members" }).first().click();
    await orla.getByRole("link", { name: "New member" }).click();
    await orla.getByLabel("Name").fill("Ivo Thackray");
    await orla.getByLabel("Another word").fill("branch");
    await orla.getByRole("button", { name: "Add", exact: true }).click();
    await orla.getByRole("button", { name: "Add the member" }).click();
    await orla.getByLabel("E-mail address").fill(IVO);
    await orla.getByRole("button", { name: "Invite" }).click();
    invitation = pathOf(await copied(orla, "Invitation link"));
    await orla.getByRole("navigation", { name: "Where you are" }).getByRole("link").click();
    await orla.getByText("2 members, 1 can sign in").waitFor();

    const entered = await house.enter(invitation, { viewport: PHONE });
    ivo = entered.page;
    complaintsOfIvo = entered.complaints;
    await ivo.getByRole("heading", { name: "Join Oakwater Vale" }).waitFor();
    await ivo.getByLabel("Password").fill(PASSWORDS.ivo);
    await ivo.getByRole("button", { name: "Join the club" }).click();
    await ivo.getByText("Its secretary makes the first one").waitFor();
    // nobody pressed anything on the secretary's page
    await orla.getByText("2 members, 2 can sign in").waitFor();
    expect(complaintsOfIvo()).toEqual([]);
  });

  it("see what their roles lead to, and get to no other page by its address", async () => {
    expect(await ivo.getByRole("navigation", { name: "Club" }).getByRole("link").allInnerTexts()).toEqual([
      "Nights",
      "Railway",
      "Roster",
      "Handsets",
      "Wiring",
      "Readings",
      "Members",
    ]);
    expect(await orla.getByRole("navigation", { name: "Club" }).getByRole("link").allInnerTexts()).toEqual([
      "Nights",
      "Railway",
      "Roster",
      "Handsets",
      "Wiring",
      "Readings",
      "Members",
      "Trail",
      "Mails",
    ]);
    await ivo.goto(`${house.address}${CLUB}/trail`);
    await ivo.getByText("Your roles in the club do not allow this").waitFor();
  });

  it("gain a role while they are here, by the secretary's hand, which the trail tells", async () => {
    await orla.getByRole("link", { name: "Ivo Thackray" }).click();
    await orla.getByLabel("Session marshal").check();
    await orla.getByRole("button", { name: "Save" }).click();
    await orla.getByText("Saved.").waitFor();
    await orla.getByRole("link", { name: "Trail" }).click();
    await orla.getByLabel("What").selectOption("member");
    const latest = orla.locator(".trail-row").first();
    await latest.getByText("changed member it").waitFor();
    expect(await latest.textContent()).toMatch(
      /Orla Fennimore[\s\S]*roles\s*nothing →\s*became\s*session marshal/,
    );
    expect(complaintsOfOrla().filter((one) => !one.includes("400"))).toEqual([]);
  });

  it("make a token, which works until it is revoked", async () => {
    await ivo.goto(`${house.address}/account`);
    await ivo.getByRole("button", { name: "New token" }).click();
    await ivo.getByLabel("What it is for").fill("Nightly copy");
    await ivo.getByRole("button", { name: "Make the token" }).click();
    const token = await copied(ivo, "Your new token");
    const ask = () =>
      fetch(`${house.address}/api${CLUB}/members`, { headers: { authorization: `Bearer ${token}` } });
    expect((await ask()).status).toBe(200);
    await ivo.getByRole("button", { name: "I have it" }).click();
    await ivo.getByRole("button", { name: "Revoke the token Nightly copy" }).click();
    await ivo.getByRole("button", { name: "Revoke the token Nightly copy for good" }).click();
    await ivo.getByText("You have none.").waitFor();
    expect((await ask()).status).toBe(401);
  });

  it("have a calendar at a secret address, until they revoke it", async () => {
    await ivo.getByRole("button", { name: "Make a new address" }).click();
    const address = pathOf(await copied(ivo, "Address of your calendar"));
    const ask = () => fetch(`${house.address}${address}`);
    expect((await ask()).headers.get("content-type")).toContain("text/calendar");
    await ivo.getByRole("button", { name: "Revoke the address in use" }).click();
    await ivo.getByRole("button", { name: "Revoke the address in use for good" }).click();
    await ivo.getByText("the old address leads nowhere now").waitFor();
    expect((await ask()).status).toBe(404);
  });

  it("change a password, which ends the sign-in on another device and says so there", async () => {
    const other = await house.enter("/sign-in?to=%2Faccount");
    await signIn(other.page, IVO, PASSWORDS.ivo);
    await other.page.getByRole("heading", { name: "My account" }).waitFor();
    const watching = await house.enter(`/sign-in?to=${encodeURIComponent(`${CLUB}/members`)}`);
    await signIn(watching.page, IVO, PASSWORDS.ivo);
    await watching.page.getByText("2 members").waitFor();
    await ivo.getByLabel("Password now").fill(PASSWORDS.ivo);
    await ivo.getByLabel("New password").fill(`${PASSWORDS.ivo} more`);
    await ivo.getByRole("button", { name: "Change the password" }).click();
    await ivo.getByText("Everywhere else you are signed out.").waitFor();
    await other.page.getByLabel("Name", { exact: true }).fill("Ivo T.");
    await other.page.getByRole("button", { name: "Save the name" }).click();
    await other.page.getByText("Your sign-in has ended.").waitFor();
    expect(await other.page.getByLabel("Name", { exact: true }).inputValue()).toBe("Ivo T.");
    // this page asked for nothing: its line of events ended with the sign-in
    await watching.page.getByText("Your sign-in has ended.").waitFor();
  });

  it("get another password from a link that the secretary hands them", async () => {
    await orla.goto(`${house.address}${CLUB}/members/it`);
    await orla.getByRole("button", { name: "Make a link to a new password" }).click();
    const link = pathOf(await copied(orla, "Link to a new password"));
    const { page } = await house.enter(link, { viewport: PHONE });
    await page.getByLabel("New password").fill(`${PASSWORDS.ivo} again`);
    await page.getByRole("button", { name: "Use this password" }).click();
    await page.locator(".person-menu").waitFor();
    const again = await house.enter("/sign-in", { viewport: PHONE });
    await signIn(again.page, IVO, `${PASSWORDS.ivo} again`);
    ivo = again.page;
  });

  it("take away all that is kept of them, and are erased; what they did stays without them", async () => {
    await ivo.goto(`${house.address}/account`);
    const loading = ivo.waitForEvent("download");
    await ivo.getByRole("link", { name: "Download my data" }).click();
    const chunks: Buffer[] = [];
    for await (const chunk of await (await loading).createReadStream()) chunks.push(chunk as Buffer);
    const data = JSON.parse(Buffer.concat(chunks).toString());
    expect(data.person).toMatchObject({ name: "Ivo Thackray", email: IVO });
    await ivo.getByRole("button", { name: "Erase my account" }).click();
    await ivo.getByLabel("Your password, to be sure").fill("not this one");
    await ivo.getByRole("button", { name: "Erase it for good" }).click();
    await ivo.getByText("This is not your password.").waitFor();
    await ivo.getByLabel("Your password, to be sure").fill(`${PASSWORDS.ivo} again`);
    await ivo.getByRole("button", { name: "Erase it for good" }).click();
    await ivo.getByRole("heading", { name: "Sign in" }).waitFor();
    await ivo.getByLabel("E-mail address").fill(IVO);
    await ivo.getByLabel("Password").fill(`${PASSWORDS.ivo} again`);
    await ivo.getByRole("button", { name: "Sign in", exact: true }).click();
    await ivo.getByRole("alert").getByText("no account with this e-mail address and password").waitFor();
    await orla.goto(`${house.address}${CLUB}/members`);
    await orla.getByText("Former member").waitFor();
    expect(await orla.getByText("Ivo Thackray").count()).toBe(0);
  });

  it("are shown accessibly, and fit sideways, with all that has happened", async () => {
    for (const where of [`${CLUB}/members`, `${CLUB}/trail`, `${CLUB}/mails`, "/account"])
      for (const [colorScheme, viewport] of [
        ["light", DESK],
        ["dark", PHONE],
      ] as const) {
        await orla.emulateMedia({ colorScheme });
        await orla.setViewportSize(viewport);
        await orla.goto(`${house.address}${where}`);
        await orla.locator("main :is(table, ol, form, .empty)").first().waitFor();
        expect(await sidewaysOverflow(orla)).toBe(0);
        const { violations } = await new AxeBuilder({ page: orla }).analyze();
        expect(violations.map(({ id, nodes }) => [where, id, nodes.map((n) => n.target)])).toEqual([]);
      }
    expect(complaintsOfOrla().filter((one) => !one.includes("400"))).toEqual([]);
  });

  it("keep a last secretary: who is alone in it cannot go, and is told what to do", async () => {
    await orla.goto(`${house.address}/account`);
    await orla.getByRole("button", { name: "Erase my account" }).click();
    await orla.getByLabel("Your password, to be sure").fill(PASSWORDS.orla);
    await orla.getByRole("button", { name: "Erase it for good" }).click();
    const alert = orla.getByRole("alert");
    await alert.waitFor();
    expect(await alert.textContent()).toMatch(/secretary/i);
  });
});
