import { AxeBuilder } from "@axe-core/playwright";
import type { BrowserContextOptions, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { noBrowser } from "../support/browser.ts";
import { answerAccount, CALENDAR, TOKEN } from "./fixture/account.ts";
import { answerSignIns, PEOPLES_PASSWORD } from "./fixture/people.ts";
import { sidewaysOverflow } from "./plan-view.ts";
import { DESK, openHouse, PHONE } from "./visits.ts";

describe.skipIf(noBrowser)("one's own account", () => {
  let house: Awaited<ReturnType<typeof openHouse>>;
  beforeAll(async () => {
    house = await openHouse();
  });
  afterEach(() => house?.leave());
  afterAll(() => house?.close());

  async function visit(options: BrowserContextOptions = {}) {
    let asked: Awaited<ReturnType<typeof answerAccount>> = [];
    const prepare = async (page: Page) => {
      await answerSignIns(page, { isSignedIn: true });
      asked = await answerAccount(page);
    };
    const visited = await house.visit("/account", { options, prepare });
    await visited.page.getByText("Timetable import").waitFor();
    return { ...visited, asked };
  }

  it("takes another password, says what is wrong with one beside it, and forgets it once it is changed", async () => {
    const { page, asked } = await visit();
    const [now, next] = [page.getByLabel("Password now"), page.getByLabel("New password")];
    await now.fill(PEOPLES_PASSWORD);
    await next.fill("12345678");
    await page.getByRole("button", { name: "Change the password" }).click();
    await page.getByText("Too many people have this one.").waitFor();
    expect(await next.getAttribute("aria-invalid")).toBe("true");
    await next.fill("another sentence of mine");
    await page.getByRole("button", { name: "Change the password" }).click();
    await page.getByText("Everywhere else you are signed out.").waitFor();
    expect(await next.inputValue()).toBe("");
    expect(asked.at(-1)?.body).toEqual({ current: PEOPLES_PASSWORD, password: "another sentence of mine" });
  });

  it("shows a new token once", async () => {
    const { page, asked, complaints } = await visit();
    await page.getByRole("button", { name: "New token" }).click();
    await page.getByLabel("What it is for").fill("Nightly copy");
    await page.getByLabel("Where").selectOption("Oakwater Vale Circle");
    await page.getByRole("button", { name: "Make the token" }).click();
    expect(await page.getByLabel("Your new token").inputValue()).toBe(TOKEN);
    expect(asked.at(-1)?.body).toMatchObject({ name: "Nightly copy", scope: "read", club: "vale" });
    await page.getByText("Nightly copy").waitFor();
    await page.getByRole("button", { name: "I have it" }).click();
    expect(await page.content()).not.toContain(TOKEN);
    expect(complaints).toEqual([]);
  });

  it("asks a second press before a token is revoked for good", async () => {
    const { page, asked } = await visit();
    await page.getByRole("button", { name: "Revoke the token Backup" }).click();
    await page.getByRole("button", { name: "Keep the token Backup" }).click();
    await page.getByRole("button", { name: "Revoke the token Backup" }).press("Enter");
    expect(asked).toEqual([]);
    await page.getByRole("button", { name: "Revoke the token Backup for good" }).press("Enter");
    await page.getByText("Backup").waitFor({ state: "detached" });
    expect(asked.map(({ what }) => what)).toEqual(["DELETE /api/me/tokens/token-0"]);
  });

  it("has a calendar at a secret address, which can be made anew and revoked", async () => {
    const { page, asked } = await visit();
    await page.getByRole("button", { name: "Make a new address" }).click();
    await page.getByLabel("Address of your calendar").waitFor();
    expect(await page.getByLabel("Address of your calendar").inputValue()).toBe(CALENDAR);
    await page.getByRole("button", { name: "Revoke the address in use" }).click();
    await page.getByRole("button", { name: "Revoke the address in use for good" }).click();
    await page.getByText("the old address leads nowhere now").waitFor();
    expect(asked.map(({ what }) => what)).toEqual(["POST /api/me/calendar", "DELETE /api/me/calendar"]);
  });

  it("is erased only with its password, and says before that nobody can undo it", async () => {
    const { page, asked } = await visit();
    await page.getByText("Nobody can undo this.").waitFor();
    await page.getByRole("button", { name: "Erase my account" }).click();
    await page.getByRole("button", { name: "Erase it for good" }).click();
    expect(asked).toEqual([]);
    await page.getByLabel("Your password, to be sure").fill(PEOPLES_PASSWORD);
    await page.getByRole("button", { name: "Erase it for good" }).click();
    await page.getByRole("heading", { name: "Sign in" }).waitFor();
    expect(asked).toEqual([{ what: "POST /api/me/erase", body: { password: PEOPLES_PASSWORD } }]);
  });

  for (const colorScheme of ["light", "dark"] as const)
    for (const [name, viewport] of Object.entries({ desk: DESK, phone: PHONE }))
      it(`is accessible and fits sideways: ${name}, ${colorScheme}`, async () => {
        const { page, complaints } = await visit({ viewport, colorScheme });
        await page.getByRole("button", { name: "New token" }).click();
        await page.getByRole("button", { name: "Erase my account" }).click();
        await page.getByRole("button", { name: "Revoke the token Backup" }).click();
        await page.getByRole("button", { name: "Make a new address" }).click();
        await page.getByLabel("Address of your calendar").waitFor();
        expect(await sidewaysOverflow(page)).toBe(0);
        const { violations } = await new AxeBuilder({ page }).analyze();
        expect(violations.map(({ id, nodes }) => [id, nodes.map((n) => n.target)])).toEqual([]);
        expect(complaints).toEqual([]);
      });
});
