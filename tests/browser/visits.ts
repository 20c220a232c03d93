import path from "node:path";
import type { Browser, BrowserContext, BrowserContextOptions, Page } from "playwright-core";
import { demoClub } from "../../seed/index.ts";
import { PERMISSIONS } from "../../shared/permissions.ts";
import { projectRoot } from "../../src/lib/project-root.ts";
import { complaintsOf, openBrowser } from "../support/browser.ts";
import { testApp } from "../support/test-app.ts";

/** A desk's and a phone's window, CSS px. */
export const DESK = { width: 1440, height: 900 };
export const PHONE = { width: 390, height: 844 };

/** The built client. */
export const CLIENT = path.join(projectRoot(import.meta.dirname), "dist/web");

/** Who looks at the pages where the service itself admits whoever sits at it: the secretary of both clubs of the tests. */
const SECRETARY = {
  person: { name: "Orsolya Sallowfield", email: "orsolya@example.org" },
  clubs: [
    { code: demoClub.code, name: demoClub.name },
    { code: "vale", name: "Oakwater Vale Circle" },
  ].map((club) => ({ ...club, member: "os", roles: ["secretary"], permissions: PERMISSIONS })),
  expires: "2099-01-01T00:00:00.000Z",
};

/** What to know of a visit before its first page opens. */
export interface Visit {
  readonly options?: BrowserContextOptions;
  readonly prepare?: (page: Page) => Promise<void>;
}

/** The service with the built client, on a database of its own, and a browser to visit it with. Close it in the end. */
export async function openHouse(overrides: Parameters<typeof testApp>[0] = {}) {
  const service = await testApp({ clientDir: CLIENT, ...overrides });
  const address = await service.app.listen({ port: 0, host: "127.0.0.1" });
  const browser: Browser = await openBrowser();
  let visits: BrowserContext[] = [];
  return {
    service,
    address,
    /** Opens an address in a window of its own; `complaints` is everything the page complains of. */
    async visit(where: string, { options = {}, prepare }: Visit = {}) {
      const context = await browser.newContext({ viewport: DESK, ...options });
      visits.push(context);
      const page = await context.newPage();
      const complaints = complaintsOf(page);
      await page.route("**/api/me", (route) => route.fulfill({ json: SECRETARY }));
      await prepare?.(page);
      await page.goto(`${address}${where}`);
      return { page, complaints };
    },
    async leave() {
      await Promise.all(visits.map((context) => context.close()));
      visits = [];
    },
    async close() {
      await browser.close();
      await service.close();
    },
  };
}
