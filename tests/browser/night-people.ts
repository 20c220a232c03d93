import type { BrowserContextOptions, Locator, Page } from "playwright-core";
import { demoClub, demoDocument } from "../../seed/index.ts";
import { permissionsOf } from "../../shared/permissions.ts";
import type { Role } from "../../shared/vocabulary.ts";
import type { Authenticate } from "../../src/http/actor.ts";
import { DESK, openHouse, PHONE } from "./visits.ts";

/** Members of the demo club as they come to the pages: with what device, in which role. */
export const PEOPLE = {
  secretary: { member: "os", roles: ["secretary"], viewport: DESK },
  rufio: { member: "rl", roles: ["member"], viewport: PHONE },
  viveca: { member: "vn", roles: ["member"], viewport: PHONE },
  marshal: { member: "gm", roles: ["session marshal"], viewport: { width: 1024, height: 768 } },
} as const satisfies Record<string, Who>;

interface Who {
  readonly member: string;
  readonly roles: readonly Role[];
  readonly viewport: { readonly width: number; readonly height: number };
}

const HEADER = "x-test-member";

/** Says of each request who makes it, in place of a sign-in. */
export const byHeader: Authenticate = async (request) => {
  const member = request.headers[HEADER];
  const who = Object.values(PEOPLE).find((one) => one.member === member) ?? PEOPLE.secretary;
  return {
    personId: null,
    name: who.member,
    mayWrite: true,
    membership: () => ({ member: who.member, permissions: permissionsOf(who.roles) }),
  };
};

/** The demo club's house, with its members at the door. */
export async function openClub() {
  const house = await openHouse({ authenticate: byHeader });
  const { request } = house.service;
  await request.post("/api/clubs").send(demoClub).expect(201);
  await request.post(`/api/clubs/${demoClub.code}/import`).send(demoDocument).expect(200);
  return {
    ...house,
    /** Opens a page for somebody who is signed in. */
    async as(name: keyof typeof PEOPLE, where: string, options: BrowserContextOptions = {}) {
      const who = PEOPLE[name];
      return house.visit(where, {
        options: {
          viewport: who.viewport,
          hasTouch: who.viewport.width < 600,
          extraHTTPHeaders: { [HEADER]: who.member },
          ...options,
        },
        prepare: (page) => answerMe(page, who),
      });
    },
  };
}

async function answerMe(page: Page, { member, roles }: Who) {
  const { code, name } = demoClub;
  const club = { code, name, member, roles, permissions: [...permissionsOf(roles)] };
  const person = { name: member, email: `${member}@example.org` };
  await page.route("**/api/me", (route) =>
    route.fulfill({ json: { person, clubs: [club], expires: "2099-01-01T00:00:00.000Z" } }),
  );
}

/** Counts what a person does with mouse, finger or keyboard. */
export function counting() {
  let actions = 0;
  return {
    actions: () => actions,
    async press(button: Locator) {
      actions++;
      await button.click();
    },
    async fill(field: Locator, text: string) {
      actions++;
      await field.fill(text);
    },
    async choose(field: Locator, value: string) {
      actions++;
      await field.selectOption(value);
    },
  };
}
