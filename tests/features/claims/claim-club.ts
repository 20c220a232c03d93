import type { z } from "zod";
import { permissionsOf } from "../../../shared/permissions.ts";
import type { train } from "../../../shared/timetable.ts";
import type { Role } from "../../../shared/vocabulary.ts";
import type { Actor } from "../../../src/http/actor.ts";
import type { testApp } from "../../support/test-app.ts";
import { exampleDocument, makeClub } from "../example-club.ts";

type TestApp = Awaited<ReturnType<typeof testApp>>;
type TrainInput = z.input<typeof train>;

export const NIGHT = "/sessions/claimed";

/** From the west yard to the east, or back, over the middle halt. Ten layout minutes are two and a half real ones. */
export function run(
  code: string,
  departs: string,
  arrives: string,
  more: Partial<TrainInput> = {},
): TrainInput {
  return {
    code,
    name: `Train ${code}`,
    lengthMm: 300,
    path: [
      { section: "W1", depart: departs },
      { section: "L1" },
      { section: "M1" },
      { section: "L2" },
      { section: "E1", arrive: arrives },
    ],
    ...more,
  };
}

export const back = (code: string, departs: string, arrives: string, more: Partial<TrainInput> = {}) =>
  run(code, departs, arrives, {
    path: [
      { section: "E1", depart: departs },
      { section: "L2" },
      { section: "M1" },
      { section: "L1" },
      { section: "W1", arrive: arrives },
    ],
    ...more,
  });

/**
 * A night of one slot, 19:00 to 21:00 real time from 10:00 on the layout clock, four layout minutes a real one. Handsets are
 * picked up a minute before and handed in half a minute after.
 */
export const TRAINS: readonly TrainInput[] = [
  run("1", "10:10", "10:20", { motivePower: [{ locomotive: "E7" }] }),
  back("2", "10:30", "10:40", { motivePower: [{ locomotive: "E7" }] }),
  // starts at the other end 90 real seconds after train 1 is handed in
  run("3", "10:32", "10:42"),
  run("4", "10:12", "10:22"),
  run("5", "11:00", "11:10", { requires: ["main line"] }),
  run("6", "12:00", "12:10"),
  // on the analog siding alone
  run("7", "12:30", "12:40", {
    path: [
      { section: "Q0", depart: "12:30" },
      { section: "Q1", arrive: "12:40" },
    ],
  }),
  run("8", "13:00", "13:10"),
];

export const claimDocument = {
  ...exampleDocument,
  // its districts were read on another night
  readings: [],
  handsets: [
    { code: "H1", name: "Radio one", commandSystem: "blue", kind: "radio", batteryMinutes: 240 },
    { code: "H2", name: "Broken", commandSystem: "blue", kind: "radio", state: "faulty" },
    {
      code: "T1",
      name: "Cable, everywhere",
      commandSystem: "blue",
      kind: "tethered",
      places: ["west", "mid", "east"],
    },
    { code: "T2", name: "Cable, west only", commandSystem: "blue", kind: "tethered", places: ["west"] },
  ],
  members: [
    { code: "ada", name: "Ada Fenwright", passedFor: ["main line", "panel"] },
    { code: "bo", name: "Bo Larkin", junior: true },
    { code: "cy", name: "Cy Marlowe" },
    { code: "dee", name: "Dee Oakes" },
  ],
  timetables: [
    { code: "night", name: "Of the night", versions: [{ number: 1, state: "issued", trains: [...TRAINS] }] },
  ],
  sessions: [
    {
      code: "claimed",
      name: "A claimed night",
      clockRatio: 4,
      areas: [
        { area: "main", control: "digital" },
        { area: "quarry", control: "analog" },
      ],
      slots: [
        {
          code: "one",
          name: "The only one",
          startsAt: "2027-03-20T19:00",
          endsAt: "2027-03-20T21:00",
          layoutStart: "10:00",
          timetable: "night",
          timetableVersion: 1,
        },
      ],
    },
  ],
} as const;

/** The club with its night a draft. Returns the club's address. */
export const makeClaimClub = (
  app: TestApp,
  code: string,
  document: object = claimDocument,
): Promise<string> => makeClub(app, code, document as typeof exampleDocument);

/** Opens the night whatever the check says. */
export async function openNight(app: TestApp, club: string, reason = "For a test"): Promise<void> {
  await moveNight(app, club, { to: "open", reason });
}

export async function moveNight(
  app: TestApp,
  club: string,
  move: { to: string; reason?: string },
): Promise<void> {
  await app.request.post(`${club}${NIGHT}/booking/moves`).set("if-match", "*").send(move).expect(200);
}

/** Someone who is this member of the club, with the given roles. */
export function actorAs(club: string, member: string, ...roles: Role[]): Actor {
  const clubCode = club.split("/").at(-1) as string;
  const permissions = permissionsOf(roles.length > 0 ? roles : ["member"]);
  return {
    personId: null,
    name: member,
    mayWrite: true,
    membership: (code) => (code === clubCode ? { member, permissions } : undefined),
  };
}

export const SLOT = `${NIGHT}/slots/one`;
