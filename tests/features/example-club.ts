import type { z } from "zod";
import type { clubDocument } from "../../shared/documents.ts";
import type { train } from "../../shared/timetable.ts";
import type { testApp } from "../support/test-app.ts";

type TestApp = Awaited<ReturnType<typeof testApp>>;
type ClubInput = z.input<typeof clubDocument>;

/** A small invented railway with one record or more of every kind: a digital line and an analog siding. */
export const exampleDocument = {
  layout: {
    areas: [
      { code: "main", name: "Main line" },
      { code: "quarry", name: "Quarry branch", note: "Switched on its own panel" },
    ],
    places: [
      { code: "west", name: "West yard" },
      { code: "mid", name: "Middle halt" },
      { code: "east", name: "East yard" },
    ],
    walks: [{ code: "west-east", from: "west", to: "east", seconds: 60, note: "Round the back" }],
    lines: [
      {
        code: "main",
        name: "Main line",
        stops: [
          { place: "west", atMm: 0 },
          { place: "mid", atMm: 4_800 },
          { place: "east", atMm: 10_800 },
        ],
      },
    ],
    commandSystems: [{ code: "blue", name: "Blue system", mostHandsets: 30, mostAddresses: 64 }],
    supplies: [
      {
        code: "B1",
        name: "Booster one",
        commandSystem: "blue",
        ratingMa: 5_000,
        accessoryMa: 120,
        volts: 15.5,
      },
    ],
    shortTests: [
      { code: "first", district: "D-West", testedOn: "2026-11-28", result: "passed", note: "At both ends" },
    ],
    districts: [{ code: "D-West", name: "District west", supply: "B1", breakerMa: 3_000, tripDelayMs: 250 }],
    sections: [
      digital("W1", "west", "staging road", 2_400),
      digital("L1", null, "line", 3_000),
      { ...digital("M1", "mid", "platform road", 1_800), maxSpeedKmh: 60.5, mustClear: true },
      digital("L2", null, "line", 3_600),
      digital("E1", "east", "staging road", 2_400),
      { ...analog("Q0", 1_600), wiring: "both", changeover: true, district: "D-West" },
      analog("Q1", 1_200),
    ],
    links: [
      { code: "W1-L1", from: "W1", to: "L1" },
      { code: "L1-M1", from: "L1", to: "M1" },
      { code: "M1-L2", from: "M1", to: "L2" },
      { code: "L2-E1", from: "L2", to: "E1" },
      { code: "M1-Q0", from: "M1", to: "Q0" },
      { code: "Q0-Q1", from: "Q0", to: "Q1", oneWay: true },
    ],
    controllers: [
      {
        code: "panel",
        name: "Quarry panel",
        place: "mid",
        transformerMa: 2_000,
        accessoryMa: 50,
        outputs: [
          { code: "K1", name: "Left", ratingMa: 800 },
          { code: "K2", name: "Right", ratingMa: 800 },
        ],
      },
    ],
    selectors: [
      { code: "S-Q0", section: "Q0", outputs: ["K1", "K2"] },
      { code: "S-Q1", section: "Q1", outputs: ["K2"] },
    ],
  },
  roster: {
    locomotives: [
      locomotive("E7", "Goods engine"),
      { ...locomotive("T3", "Tank engine"), maxSpeedKmh: 45, owner: "A member", note: "=SUM(A1)" },
    ],
    decoders: [
      { code: "X7", locomotive: "E7", addressKind: "long", address: 4_711, analogAllowed: true },
      { code: "X3", addressKind: "short", address: 3 },
    ],
    rakes: [
      { code: "R1", name: "Ten wagons", lengthMm: 1_000, vehicles: 10 },
      {
        code: "R2",
        name: "Lit coaches",
        lengthMm: 900,
        vehicles: 3,
        lighting: { ma: 45, source: "measured" },
        inrush: { ma: 200, source: "leaflet" },
      },
    ],
  },
  handsets: [
    { code: "H1", name: "Handset one", commandSystem: "blue", kind: "radio", batteryMinutes: 240 },
    {
      code: "H2",
      name: "Handset two",
      commandSystem: "blue",
      kind: "tethered",
      places: ["west", "mid"],
      state: "faulty",
    },
  ],
  members: [
    { code: "ada", name: "Ada Fenwright", passedFor: ["main line", "yard; heavy"] },
    { code: "bo", name: "Bo Larkin", passedFor: ["yard; heavy"], junior: true },
  ],
  readings: [
    {
      code: "bench-1",
      takenOn: "2027-01-09",
      origin: "bench",
      locomotive: "E7",
      state: "running",
      ma: 310,
      note: "On rollers",
    },
    {
      code: "night-1",
      takenOn: "2027-03-20",
      origin: "night",
      district: "D-West",
      session: "march",
      slot: "first",
      layoutTime: "10:05",
      ma: 350,
    },
  ],
  timetables: [
    {
      code: "winter",
      name: "Winter timetable",
      versions: [
        {
          number: 1,
          state: "issued",
          note: "As printed",
          trains: [goods("101", "10:00", "10:04", "10:06", "10:10")],
        },
        {
          number: 2,
          trains: [
            goods("101", "10:00", "10:04", "10:06", "10:10"),
            {
              code: "102",
              name: "Late goods",
              priority: 2,
              earlierMinutes: 2.5,
              laterMinutes: 10,
              motivePower: [{ locomotive: "T3" }, { locomotive: "E7", position: "rear" }],
              rakes: ["R2", "R1"],
              lengthMm: 2_300,
              placedAt: "23:40",
              removedAt: "25:30",
              requires: ["main line"],
              path: [
                { section: "E1", depart: "23:50" },
                { section: "L2" },
                { section: "M1", arrive: "24:05:30", depart: "24:05:30" },
                { section: "L1" },
                { section: "W1", arrive: "25:10" },
              ],
            },
          ],
        },
      ],
    },
  ],
  sessions: [
    {
      code: "march",
      name: "March night",
      clockRatio: 4,
      areas: [
        { area: "main", control: "digital" },
        { area: "quarry", control: "analog" },
      ],
      policy: { setUpSeconds: 2.5, reserve: 0.25 },
      slots: [
        slot("first", "2027-03-20T19:00", "2027-03-20T20:00"),
        slot("second", "2027-03-20T20:00", "2027-03-20T21:00"),
      ],
    },
  ],
} satisfies ClubInput;

export const exampleClub = {
  code: "north",
  name: "Northfold Model Railway Circle",
  timeZone: "Europe/London",
  scale: 87,
} as const;

/** Makes a club with this code, and imports the example into it unless told otherwise. */
export async function makeClub(
  { request }: Pick<TestApp, "request">,
  code: string,
  document: ClubInput | null = exampleDocument,
): Promise<string> {
  await request
    .post("/api/clubs")
    .send({ ...exampleClub, code })
    .expect(201);
  const url = `/api/clubs/${code}`;
  if (document) await request.post(`${url}/import`).send(document).expect(200);
  return url;
}

function digital(
  code: string,
  place: string | null,
  use: "line" | "platform road" | "staging road",
  lengthMm: number,
) {
  return {
    code,
    name: `Section ${code}`,
    area: "main",
    place,
    use,
    lengthMm,
    wiring: "digital",
    district: "D-West",
  } as const;
}

function analog(code: string, lengthMm: number) {
  return {
    code,
    name: `Section ${code}`,
    area: "quarry",
    use: "siding",
    lengthMm,
    wiring: "analog",
  } as const;
}

function locomotive(code: string, name: string) {
  return {
    code,
    name,
    lengthMm: 200,
    running: { ma: 350, source: "measured" },
    standing: { ma: 80, source: "measured" },
    stall: { ma: 900, source: "leaflet" },
    inrush: { ma: 600, source: "rule of thumb" },
  } as const;
}

function goods(code: string, departs: string, arrives: string, leaves: string, ends: string) {
  return {
    code,
    name: "Morning goods",
    motivePower: [{ locomotive: "E7" }],
    rakes: ["R1"],
    path: [
      { section: "W1", depart: departs },
      { section: "L1" },
      { section: "M1", arrive: arrives, depart: leaves },
      { section: "L2" },
      { section: "E1", arrive: ends },
    ],
  } satisfies z.input<typeof train>;
}

function slot(code: string, startsAt: string, endsAt: string) {
  return {
    code,
    name: `The ${code} hour`,
    startsAt,
    endsAt,
    layoutStart: "10:00",
    timetable: "winter",
    timetableVersion: 2,
  } as const;
}
