import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { noBrowser } from "../support/browser.ts";
import { answerFromFixture } from "./fixture/answers.ts";
import { answerSignIns, PEOPLES_PASSWORD, refuse, SECRETARY } from "./fixture/people.ts";
import { sidewaysOverflow } from "./plan-view.ts";
import { DESK, openHouse, PHONE } from "./visits.ts";

const INVITATION = {
  purpose: "invitation",
  expiresAt: "2027-03-20T19:00:00.000Z",
  email: "ivo@example.org",
  club: { code: "vale", name: "Oakwater Vale Circle" },
  name: "Ivo Thackray",
  hasAccount: false,
};

describe.skipIf(noBrowser)("signing in", () => {
  let house: Awaited<ReturnType<typeof openHouse>>;
  beforeAll(async () => {
    house = await openHouse();
  });
  afterEach(() => house?.leave());
  afterAll(() => house?.close());

  type Door = Awaited<ReturnType<typeof answerSignIns>>;
  async function visit(
    where: string,
    {
      options = {},
      link = {},
      ...who
    }: Parameters<typeof answerSignIns>[1] & {
      options?: object;
      link?: object | null;
    } = {},
  ) {
    let door: Door | undefined;
    const prepare = async (page: Page) => {
      await answerFromFixture(page);
      door = await answerSignIns(page, who);
      await page.route("**/api/links/*", (route) =>
        link === null
          ? refuse(route, 404, "not-found", "There is nothing here")
          : route.request().method() === "GET"
            ? route.fulfill({ json: { ...INVITATION, ...link } })
            : route.fulfill({ status: 204 }),
      );
    };
    const visited = await house.visit(where, { options, prepare });
    return { ...visited, door: door as Door };
  }
  async function signIn(page: Page, password = PEOPLES_PASSWORD) {
    await page.getByLabel("E-mail address").fill(SECRETARY.person.email);
    await page.getByLabel("Password").fill(password);
    await page.getByRole("button", { name: "Sign in", exact: true }).click();
  }

  it("comes before the page one wanted, which is then there with all its address says", async () => {
    const { page } = await visit("/clubs/vale/nights/spring/late?at=08:30#trains");
    await page.getByRole("heading", { name: "Sign in" }).waitFor();
    await signIn(page);
    await page.locator(".plot").first().waitFor();
    const { pathname, search, hash } = new URL(page.url());
    expect([pathname, search, hash]).toEqual(["/clubs/vale/nights/spring/late", "?at=08:30", "#trains"]);
  });

  it("says what was wrong, keeps the address typed, and works the next time", async () => {
    const { page } = await visit("/sign-in");
    await signIn(page, "not this one");
    await page.getByRole("alert").getByText("do not belong together").waitFor();
    expect(await page.getByLabel("E-mail address").inputValue()).toBe(SECRETARY.person.email);
    await signIn(page);
    await page.getByRole("heading", { name: "Nights" }).waitFor();
    expect(new URL(page.url()).pathname).toBe("/clubs/vale");
  });

  it("takes one press at a demo club, and shows none elsewhere", async () => {
    const elsewhere = await visit("/sign-in");
    await elsewhere.page.getByRole("button", { name: "Sign in" }).waitFor();
    expect(await elsewhere.page.getByText("demo club").count()).toBe(0);
    const { page, complaints, door } = await visit("/sign-in", { demo: true });
    await page.getByRole("button", { name: "Session marshal Godwin Mothsole" }).click();
    await page.getByRole("heading", { name: "Nights" }).waitFor();
    expect(door.asked).toEqual(["3@example.org"]);
    expect(complaints).toEqual([]);
  });

  it("out leads back to the door, and the pages behind it are closed", async () => {
    const { page } = await visit("/clubs/vale", { isSignedIn: true });
    await page.getByRole("button", { name: SECRETARY.person.name }).click();
    await page.getByText(SECRETARY.person.email).waitFor();
    await page.keyboard.press("Escape");
    expect(await page.getByText(SECRETARY.person.email).isVisible()).toBe(false);
    await page.getByRole("button", { name: SECRETARY.person.name }).press("Enter");
    await page.getByRole("button", { name: "Sign out" }).click();
    await page.getByRole("heading", { name: "Sign in" }).waitFor();
    expect(await page.locator(".person-menu").count()).toBe(0);
    await page.goto(`${house.address}/clubs/vale`);
    await page.getByRole("heading", { name: "Sign in" }).waitFor();
  });

  it("that has ended elsewhere is told of, and the page stays as it is", async () => {
    const { page, door } = await visit("/clubs/vale", { isSignedIn: true });
    // all has been read once there is a night to follow
    const night = page
      .getByRole("link", { name: "Spring night" })
      .or(page.getByRole("link", { name: "Late turn" }))
      .first();
    await night.waitFor();
    door.isSignedIn = false;
    await page.unroute("**/api/clubs/vale");
    await page.route("**/api/clubs/vale", (route) => refuse(route, 401, "not-signed-in", "Who asks?"));
    await night.click();
    const band = page.getByRole("alert").filter({ hasText: "Your sign-in has ended" });
    await band.waitFor();
    const [tab] = await Promise.all([page.context().waitForEvent("page"), band.getByRole("link").click()]);
    expect(new URL(tab.url()).pathname).toBe("/sign-in");
  });

  it("again after forgetting the password goes by mail, whether there is such an account or not", async () => {
    const { page, door, complaints } = await visit("/forgot-password");
    await page.getByLabel("E-mail address").fill("who@example.org");
    await page.getByRole("button", { name: "Send me a link" }).click();
    await page.getByRole("status").getByText("If who@example.org has an account").waitFor();
    expect(door.asked).toEqual(["who@example.org"]);
    expect(complaints).toEqual([]);
  });

  it("begins with an invitation, whose link says into which club and as whom", async () => {
    const { page } = await visit("/links/one-two-three");
    await page.getByRole("heading", { name: "Join Oakwater Vale Circle" }).waitFor();
    expect(await page.getByLabel("Your name").inputValue()).toBe("Ivo Thackray");
    const password = page.getByLabel("Password");
    await password.fill(PEOPLES_PASSWORD);
    expect(await password.getAttribute("type")).toBe("password");
    await page.getByLabel("Show it").check();
    expect(await password.getAttribute("type")).toBe("text");
    const sent = page.waitForRequest((request) => request.method() === "POST");
    await page.getByRole("button", { name: "Join the club" }).click();
    expect((await sent).postDataJSON()).toEqual({ name: "Ivo Thackray", password: PEOPLES_PASSWORD });
    await page.getByRole("heading", { name: "Sign in" }).waitFor();
    expect(new URL(page.url()).searchParams.get("to")).toBe("/clubs/vale");
  });

  it("with an account one has takes only its password to join a club", async () => {
    const { page, door } = await visit("/links/one-two-three", {
      link: { hasAccount: true, email: SECRETARY.person.email },
    });
    await page.getByLabel("Password").fill(PEOPLES_PASSWORD);
    await page.getByRole("button", { name: "Join the club" }).click();
    await page.getByRole("heading", { name: "Nights" }).waitFor();
    expect(door.asked).toEqual([SECRETARY.person.email]);
  });

  it("with a link that was used says what to do", async () => {
    const { page } = await visit("/links/used", { link: null });
    await page.getByRole("heading", { name: "This link cannot be used" }).waitFor();
    expect(await page.getByRole("link", { name: "ask for another link" }).count()).toBe(1);
  });

  const PAGES = {
    "/sign-in": {},
    "/forgot-password": {},
    "/links/a": {},
    "/links/b": { purpose: "reset", club: null },
    "/links/c": { purpose: "first-secretary", club: null, email: null, name: null },
  };
  for (const colorScheme of ["light", "dark"] as const)
    for (const [name, viewport] of Object.entries({ desk: DESK, phone: PHONE }))
      it(`is accessible and fits sideways on all its pages: ${name}, ${colorScheme}`, async () => {
        for (const [where, link] of Object.entries(PAGES)) {
          const options = { viewport, colorScheme };
          const { page, complaints } = await visit(where, { options, link, demo: true });
          await page.locator("form").waitFor();
          expect(await sidewaysOverflow(page)).toBe(0);
          const { violations } = await new AxeBuilder({ page }).analyze();
          expect(violations.map(({ id, nodes }) => [id, nodes.map((n) => n.target)])).toEqual([]);
          expect(complaints).toEqual([]);
        }
      });
});
