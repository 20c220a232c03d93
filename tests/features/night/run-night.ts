import type { z } from "zod";
import type { BookingState } from "../../../shared/booking.ts";
import type { Night } from "../../../shared/night.ts";
import type { locomotive as locomotiveSchema } from "../../../shared/roster.ts";
import type { AppDeps } from "../../../src/app.ts";
import { testApp } from "../../support/test-app.ts";
import { exampleClub, exampleDocument, makeClub } from "../example-club.ts";

/** When the first slot of the night starts; London has no offset then. */
export const SEVEN = Date.parse("2027-03-20T19:00:00Z");
export const MINUTE = 60_000;

/** A clock that stands until it is moved. */
export function standingClock(atMs = SEVEN) {
  let nowMs = atMs;
  return {
    now: () => new Date(nowMs),
    pass: (ms: number) => {
      nowMs += ms;
    },
  };
}

type Locomotive = z.input<typeof locomotiveSchema>;

const locomotive = (code: string, more: Partial<Locomotive> = {}): Locomotive => ({
  name: `Locomotive ${code}`,
  lengthMm: 200,
  running: { ma: 350, source: "measured" },
  standing: { ma: 80, source: "measured" },
  stall: { ma: 900, source: "leaflet" },
  inrush: { ma: 600, source: "rule of thumb" },
  ...more,
  code,
});
const decoder = (code: string, address: number) =>
  ({ code: `X${code}`, locomotive: code, addressKind: address > 127 ? "long" : "short", address }) as const;

/** Over the digital line from end to end in ten layout minutes, calling half way. */
function working(code: string, engine: string, hour: number, minute: number) {
  const at = (more: number) => `${hour}:${String(minute + more).padStart(2, "0")}`;
  return {
    code,
    name: `Working ${code}`,
    motivePower: [{ locomotive: engine }],
    rakes: ["R1"],
    path: [
      { section: "W1", depart: at(0) },
      { section: "L1" },
      { section: "M1", arrive: at(4), depart: at(6) },
      { section: "L2" },
      { section: "E1", arrive: at(10) },
    ],
  };
}

/** From 10:00 to 14:00 by the layout clock, in each of two slots: four trains, and locomotives that suit and do not. */
export const nightDocument = {
  ...exampleDocument,
  roster: {
    ...exampleDocument.roster,
    locomotives: [
      locomotive("E7"),
      locomotive("D1"),
      locomotive("D2"),
      locomotive("D3"),
      locomotive("D4"),
      locomotive("S1", { maxSpeedKmh: 10 }),
      locomotive("L1", { lengthMm: 900 }),
      locomotive("H1", { running: { ma: 3_100, source: "measured" } }),
      locomotive("T3", { note: "Painted in 2020." }),
    ],
    decoders: [
      decoder("E7", 4_711),
      decoder("D1", 1_001),
      decoder("D2", 1_002),
      decoder("D3", 4_711),
      decoder("D4", 1_002),
      decoder("S1", 12),
      decoder("L1", 13),
      decoder("H1", 14),
    ],
  },
  handsets: [
    ...exampleDocument.handsets,
    { code: "H3", name: "Handset three", commandSystem: "blue", kind: "radio" } as const,
  ],
  timetables: [
    {
      code: "winter",
      name: "Winter timetable",
      versions: [
        {
          number: 1,
          state: "issued" as const,
          trains: [
            working("101", "E7", 10, 0),
            working("102", "D2", 10, 8),
            working("103", "D1", 11, 0),
            working("104", "D2", 12, 0),
          ],
        },
      ],
    },
  ],
  sessions: exampleDocument.sessions.map((session) => ({
    ...session,
    slots: session.slots.map((slot) => ({ ...slot, timetableVersion: 1 })),
  })),
};

export type NightApp = Awaited<ReturnType<typeof nightApp>>;

/** An app with a club whose March night is booked so far, and a clock that stands at seven. */
export async function nightApp(state: BookingState, overrides: Partial<AppDeps> = {}) {
  const clock = standingClock();
  const app = await testApp({ clock, ...overrides });
  const url = await makeClub(app, exampleClub.code, nightDocument);
  const night = `${url}/sessions/march/night`;
  const session = await app.prisma.session.findFirstOrThrow({ where: { code: "march" } });
  await setBooking(app, session, state);
  const read = async (): Promise<Night> => (await app.request.get(night).expect(200)).body;
  const post = (path: string, body: object) => app.request.post(`${night}/${path}`).send(body);
  const train = async (code: string, slot = "first") => {
    const found = (await read()).trains.find((one) => one.train === code && one.slot === slot);
    if (found === undefined) throw new Error(`no train ${code}`);
    return found;
  };
  const report = async (code: string, body: object, slot = "first") => {
    const { version } = await train(code, slot);
    return app.request
      .put(`${night}/trains/${slot}/${code}`)
      .set("if-match", `"${version}"`)
      .send(body)
      .expect(200);
  };
  return { ...app, clock, url, night, session, read, post, train, report };
}

/** Where the night's booking stands, whatever way it came there. */
export async function setBooking(
  { prisma }: Pick<NightApp, "prisma">,
  { id: sessionId, clubId }: { readonly id: string; readonly clubId: string },
  state: BookingState,
): Promise<void> {
  await prisma.booking.upsert({
    where: { clubId_sessionId: { clubId, sessionId } },
    create: { clubId, sessionId, state },
    update: { state },
  });
}
