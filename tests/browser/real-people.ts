import type { BrowserContextOptions, Page } from "playwright-core";
import { expect } from "vitest";
import { makeFirstLink } from "../../src/features/accounts/index.ts";
import { systemClock } from "../../src/lib/clock.ts";
import { openHouse } from "./visits.ts";

export const PASSWORDS = { orla: "the points are set for the branch", ivo: "eleven wagons and a van" };

/** A house whose service lets people in by their accounts alone, as a club's does. Close it in the end. */
export async function openRealHouse(overrides: Parameters<typeof openHouse>[0] = {}) {
  const house = await openHouse({ accounts: true, ...overrides });
  return {
    ...house,
    /** Opens a page of the service as it is: nothing is answered in its place. */
    async enter(where: string, options: BrowserContextOptions = {}) {
      const visited = await house.visit(where, { options, prepare: (page) => page.unroute("**/api/me") });
      return {
        ...visited,
        complaints: () => visited.complaints.filter((one) => !isNobodyYet(one) && !isGivenUp(one)),
      };
    },
    /** The link that the service prints when it starts without any person. */
    firstLink: async () => `/links/${await makeFirstLink(house.service.prisma, systemClock)}`,
  };
}

/** Browsers complain of a 401, which is how a page learns that nobody is signed in yet. */
const isNobodyYet = (complaint: string) => complaint.includes("401") && complaint.endsWith("/api/me");

/** A page that is left gives up its line of events and what it still waits for. */
const isGivenUp = (complaint: string) => complaint.endsWith("net::ERR_ABORTED");

export async function signIn(page: Page, email: string, password: string): Promise<void> {
  await page.getByLabel("E-mail address").fill(email);
  await page.getByLabel("Password").fill(password);
  await page.getByRole("button", { name: "Sign in", exact: true }).click();
  await page.locator(".person-menu").waitFor();
}

/** What of the page's address is this service's own: a link made here names the host that it is known by. */
export const pathOf = (link: string) => new URL(link).pathname;

/** The value of a line that is there to be copied. */
export async function copied(page: Page, label: string): Promise<string> {
  const line = page.getByLabel(label, { exact: true });
  await line.waitFor();
  const value = await line.inputValue();
  expect(value.length).toBeGreaterThan(20);
  return value;
}
