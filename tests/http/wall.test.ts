import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Role } from "../../shared/vocabulary.ts";
import { makeClub } from "../features/example-club.ts";
import { makePerson, type TestPerson } from "../support/people.ts";
import { testApp } from "../support/test-app.ts";

interface Route {
  readonly method: string;
  readonly path: string;
  readonly tag: string;
  readonly id: string;
}

type Paths = Readonly<Record<string, Readonly<Record<string, { operationId: string; tags: string[] }>>>>;

let app: Awaited<ReturnType<typeof testApp>>;
let routes: readonly Route[];
let stranger: TestPerson;

beforeAll(async () => {
  app = await testApp({ accounts: true });
  const founder = await makePerson(app);
  for (const code of ["north", "south"])
    await makeClub({ request: founder.agent as unknown as typeof app.request }, code);
  stranger = await makePerson(app, { club: "south", roles: ["secretary"] });
  const { body } = await app.request.get("/api/openapi.json").expect(200);
  routes = Object.entries(body.paths as Paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, { operationId, tags }]) => ({
      method: method.toUpperCase(),
      path,
      tag: String(tags[0]),
      id: operationId,
    })),
  );
});
afterAll(() => app.close());

const ofClubs = () => routes.filter(({ path }) => path.includes("{club}"));

/** Asks a route of a club, all else in its address being made up but well formed. A stream that opens is closed again. */
async function ask({ method, path, id }: Route, club: string, cookie?: string) {
  const url = path
    .replace("{club}", club)
    .replace("{version}", "2")
    .replaceAll(/\{(claim|swap|token)\}/g, "01930000-0000-7000-8000-000000000000")
    .replaceAll(/\{\w+\}/g, "x");
  const response = await app.app.inject({
    method: method as "GET",
    url,
    headers: { "if-match": "*", ...(cookie !== undefined && { cookie }) },
    payloadAsStream: id === "streamEvents",
  });
  if (id !== "streamEvents" || response.statusCode !== 200)
    return {
      status: response.statusCode,
      text: id === "streamEvents" ? await drain(response) : response.body,
    };
  response.stream().destroy();
  return { status: 200, text: "" };
}

async function drain(response: { stream(): AsyncIterable<Buffer> }): Promise<string> {
  const chunks: Buffer[] = [];
  for await (const chunk of response.stream()) chunks.push(Buffer.from(chunk));
  return Buffer.concat(chunks).toString();
}

const codeIn = (text: string): unknown => (text.startsWith("{") ? JSON.parse(text).code : undefined);

const PUBLIC = new Set([
  ...["readHealth", "readReadiness", "listProblemKinds", "readProblemKind"],
  ...["signIn", "signOut", "listDemoSignIns", "readOneTimeLink", "useOneTimeLink", "requestReset"],
  // its address is its key
  "readCalendar",
]);

describe("nobody in particular", () => {
  it("is told by the reference what needs no sign-in, and that all else does", async () => {
    const { body } = await app.request.get("/api/openapi.json").expect(200);
    expect(body.security).toEqual([{ token: [] }, { cookie: [] }]);
    const open = Object.values(
      body.paths as Record<string, Record<string, { operationId: string; security?: [] }>>,
    )
      .flatMap((methods) => Object.values(methods))
      .filter(({ security }) => security?.length === 0)
      .map(({ operationId }) => operationId);
    expect(new Set(open)).toEqual(PUBLIC);
  });

  it("gets nothing but what lets them in, at every address of the API", async () => {
    expect(routes.length).toBeGreaterThan(130);
    for (const route of routes.filter(({ id }) => !PUBLIC.has(id))) {
      const { status, text } = await ask(route, "north");
      expect([route.id, status, codeIn(text)]).toEqual([route.id, 401, "not-signed-in"]);
    }
  });

  it("is told the same of a club that is there and of one that is not", async () => {
    for (const route of ofClubs()) expect(await ask(route, "north")).toEqual(await ask(route, "nowhere"));
  });
});

describe("the secretary of another club", () => {
  it("is answered exactly as if the club were not there, on every route", async () => {
    for (const route of ofClubs()) {
      const [there, nowhere] = [
        await ask(route, "north", stranger.cookie),
        await ask(route, "nowhere", stranger.cookie),
      ];
      expect([route.id, there.status]).toEqual([route.id, 404]);
      expect([route.id, there.text]).toEqual([route.id, nowhere.text.replaceAll("nowhere", "north")]);
    }
  });

  it("sees no club but their own in the list", async () => {
    const { body } = await stranger.agent.get("/api/clubs").expect(200);
    expect(body.items.map(({ code }: { code: string }) => code)).toEqual(["south"]);
  });

  it("is answered of what lies in another club, asked for in their own, as of what is nowhere", async () => {
    const { id: clubId } = await app.prisma.club.findUniqueOrThrow({ where: { code: "north" } });
    const session = await app.prisma.session.findFirstOrThrow({
      where: { clubId },
      include: { slots: true },
    });
    const slot = session.slots[0]?.code ?? "";
    const duty = await app.prisma.duty.create({
      data: { clubId, sessionId: session.id, slotCode: slot, code: "yard", name: "The yard", kind: "yard" },
    });
    const at = new Date("2027-03-20T19:00:00Z");
    const later = new Date("2027-03-20T20:00:00Z");
    const claim = await app.prisma.claim.create({
      data: {
        clubId,
        sessionId: session.id,
        slotCode: slot,
        dutyId: duty.id,
        memberCode: "ada",
        fromAt: at,
        untilAt: later,
      },
    });
    const own = `/api/clubs/south/sessions/${session.code}/slots/${slot}`;
    const answers = async (id: string) => {
      const given = await stranger.agent.delete(`${own}/claims/${id}`);
      const changed = await stranger.agent.put(`${own}/claims/${id}/handset`).send({ handset: "H1" });
      const swapped = await stranger.agent.post(`${own}/swaps`).send({ gives: id, wants: id });
      return [given, changed, swapped].map(({ status, text }) => [status, text.replaceAll(id, "ID")]);
    };
    const [foreign, unknown] = [await answers(claim.id), await answers(randomUUID())];
    expect(foreign).toEqual(unknown);
    expect(await app.prisma.claim.count({ where: { id: claim.id } })).toBe(1);
    await app.prisma.claim.delete({ where: { id: claim.id } });
  });
});

it("nobody revokes the token of another, nor learns that it is there", async () => {
  const owner = await makePerson(app, { club: "south" });
  const expiresAt = new Date(Date.now() + 86_400_000).toISOString();
  const made = await owner.agent.post("/api/me/tokens").send({ name: "Backup", scope: "read", expiresAt });
  expect(made.status).toBe(201);
  const [theirs, nobodys] = [made.body.id as string, randomUUID()];
  const answerTo = async (id: string) => {
    const { status, text } = await stranger.agent.delete(`/api/me/tokens/${id}`);
    return [status, text.replaceAll(id, "ID")];
  };
  expect(await answerTo(theirs)).toEqual(await answerTo(nobodys));
  expect((await owner.agent.get("/api/me/tokens").expect(200)).body.items).toHaveLength(1);
});

/** Who may do what, said once more in other words than the service's own. */
const KEEPERS: Readonly<Record<string, readonly Role[]>> = {
  layout: ["layout owner"],
  roster: ["layout owner"],
  handsets: ["layout owner"],
  readings: ["layout owner", "session marshal"],
  timetables: ["timetable clerk"],
  "what-if": ["timetable clerk"],
};
const EVERYONES = new Set([
  ...[
    "trySlot",
    "tellEffects",
    "suggestRosterColumns",
    "reportWiring",
    "costBothWays",
    "costTimetableBothWays",
    "compareReadings",
    "makeSelectorSchedule",
  ],
  ...["checkSlot", "sayComing", "claim", "changeHandset", "giveBack", "joinQueue", "leaveQueue"],
  ...["offerSwap", "acceptSwap", "refuseSwap", "withdrawSwap"],
]);
const SECRETARYS_TO_READ = new Set(["listAccounts", "listMails", "readTrail", "readFairness"]);
const IMPORTS: Readonly<Record<string, readonly Role[]>> = {
  importTrains: ["timetable clerk"],
  importLocomotives: ["layout owner"],
  importDecoders: ["layout owner"],
  importRakes: ["layout owner"],
  importHandsets: ["layout owner"],
  importReadings: ["layout owner", "session marshal"],
  importRosterSheet: ["layout owner"],
};

function mayUse({ method, tag, id }: Route, role: Role): boolean {
  if (role === "secretary") return true;
  if (method === "GET") return !SECRETARYS_TO_READ.has(id);
  if (EVERYONES.has(id)) return true;
  if (id === "acceptCorrections") return role === "layout owner";
  if (tag === "night" || id === "moveBooking") return role === "session marshal";
  return (KEEPERS[tag] ?? IMPORTS[id] ?? []).includes(role);
}

describe.each(["secretary", "layout owner", "timetable clerk", "session marshal", "member"] as const)(
  "a %s of the club",
  (role) => {
    it("may use what the role is for, on every route, and nothing else", async () => {
      const { cookie } = await makePerson(app, {
        club: "north",
        ...(role !== "member" && { roles: [role] }),
      });
      for (const route of ofClubs()) {
        const { status, text } = await ask(route, "north", cookie);
        const refused = status === 403 && codeIn(text) === "not-permitted";
        expect([route.id, refused]).toEqual([route.id, !mayUse(route, role)]);
        expect([route.id, status]).not.toEqual([route.id, 401]);
        expect(status).toBeLessThan(500);
      }
    });
  },
);
