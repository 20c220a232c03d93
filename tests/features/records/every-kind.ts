import { exampleDocument } from "../example-club.ts";

/** One collection of the API: where it lies under a club, what it holds there, and what more can be put into it. */
export interface Example {
  readonly path: string;
  /** Codes that the example club has, in order. */
  readonly codes: readonly string[];
  /** A body that none of them has; */
  readonly fresh: Readonly<Record<string, unknown>>;
  /** What to change in it. */
  readonly change: Readonly<Record<string, unknown>>;
  /** Queries and the codes they leave. */
  readonly filters: Readonly<Record<string, readonly string[]>>;
}

const { layout, roster, handsets, readings, timetables, sessions } = exampleDocument;
const codesOf = (records: readonly { readonly code: string }[]) => records.map(({ code }) => code).sort();
const winterTrains = timetables[0]?.versions[1]?.trains ?? [];

/** Every kind of record that lies under a club. */
export const EXAMPLES: readonly Example[] = [
  {
    path: "areas",
    codes: codesOf(layout.areas),
    fresh: { code: "harbour", name: "Harbour" },
    change: { name: "Old harbour" },
    filters: { "q=BRANCH": ["quarry"], "q=ma": ["main"], "q=%25": [], "q=_": [] },
  },
  {
    path: "places",
    codes: codesOf(layout.places),
    fresh: { code: "south", name: "South end", xMm: 1_200, yMm: -300 },
    change: { note: "By the door", xMm: null, yMm: null },
    filters: { "q=yard": ["east", "west"] },
  },
  {
    path: "walks",
    codes: codesOf(layout.walks),
    fresh: { code: "mid-west", from: "mid", to: "west", seconds: 25 },
    change: { seconds: 0, to: "east" },
    filters: { "place=west": ["west-east"], "place=mid": [], "q=EAST": ["west-east"] },
  },
  {
    path: "lines",
    codes: codesOf(layout.lines),
    fresh: {
      code: "short",
      name: "Short line",
      stops: [
        { place: "mid", atMm: 0 },
        { place: "east", atMm: 6_000 },
      ],
    },
    change: {
      stops: [
        { place: "west", atMm: 0 },
        { place: "east", atMm: 6_000 },
        { place: "mid", atMm: 7_000 },
      ],
    },
    filters: { "q=short": [] },
  },
  {
    path: "command-systems",
    codes: codesOf(layout.commandSystems),
    fresh: { code: "green", name: "Green system", longAddressMost: 9_999 },
    change: { mostAddresses: 32 },
    filters: { "q=blue": ["blue"] },
  },
  {
    path: "supplies",
    codes: codesOf(layout.supplies),
    fresh: { code: "B2", name: "Booster two", commandSystem: "blue", ratingMa: 3_000 },
    change: { volts: 14.75 },
    filters: { "commandSystem=blue": ["B1"], "commandSystem=green": [] },
  },
  {
    path: "districts",
    codes: codesOf(layout.districts),
    fresh: { code: "D-East", name: "District east", supply: "B1", breakerMa: 2_500 },
    change: { tripDelayMs: 0 },
    filters: { "supply=B1": ["D-West"], "supply=B9": [] },
  },
  {
    path: "short-tests",
    codes: codesOf(layout.shortTests),
    fresh: { code: "spring", district: "D-West", testedOn: "2027-03-13", result: "passed", by: "Ada" },
    change: { testedOn: "2027-03-14", testedAt: "09:35:10", result: "failed", by: "" },
    filters: { "district=D-West": ["first"], "district=D-East": [], "q=FIR": ["first"] },
  },
  {
    path: "sections",
    codes: codesOf(layout.sections),
    fresh: { code: "Z1", name: "Spare", area: "main", use: "loop", lengthMm: 1, wiring: "digital" },
    change: { lengthMm: 1_000_000, place: "mid", sharing: "shared" },
    filters: {
      "area=quarry": ["Q0", "Q1"],
      "district=D-West&place=mid": ["M1"],
      "place=west": ["W1"],
      "q=section+q": ["Q0", "Q1"],
      "area=main&q=L": ["L1", "L2"],
    },
  },
  {
    path: "links",
    codes: codesOf(layout.links),
    fresh: { code: "E1-Q1", from: "E1", to: "Q1" },
    change: { oneWay: true, to: "Q0" },
    filters: { "section=L1": ["L1-M1", "W1-L1"], "section=L1&q=w1": ["W1-L1"] },
  },
  {
    path: "controllers",
    codes: codesOf(layout.controllers),
    fresh: {
      code: "spare",
      name: "Spare controller",
      transformerMa: 1_500,
      outputs: [
        { code: "K8", name: "A", ratingMa: 500 },
        { code: "K9", name: "B", ratingMa: 500 },
      ],
    },
    change: {
      outputs: [
        { code: "K9", name: "B renamed", ratingMa: 600 },
        { code: "K7", name: "C", ratingMa: 400 },
      ],
    },
    filters: { "q=quarry": ["panel"] },
  },
  {
    path: "selectors",
    codes: codesOf(layout.selectors),
    fresh: { code: "S-E1", section: "E1", outputs: ["K2", "K1"] },
    change: { outputs: ["K1"] },
    filters: { "output=K1": ["S-Q0"], "section=Q1": ["S-Q1"], "output=K2": ["S-Q0", "S-Q1"] },
  },
  {
    path: "locomotives",
    codes: codesOf(roster.locomotives),
    fresh: { ...roster.locomotives[0], code: "N9", name: "New engine" },
    change: { running: { ma: 0, source: "rule of thumb" }, maxSpeedKmh: 120.25 },
    filters: { "q=tank": ["T3"] },
  },
  {
    path: "decoders",
    codes: codesOf(roster.decoders),
    fresh: { code: "X9", locomotive: "T3", addressKind: "long", address: 10_239 },
    change: { addressKind: "short", address: 127, locomotive: null },
    filters: { "address=3": ["X3"], "address=4711&locomotive=E7": ["X7"], "locomotive=T3": [] },
  },
  {
    path: "rakes",
    codes: codesOf(roster.rakes),
    fresh: { code: "R9", name: "One van", lengthMm: 120 },
    change: { vehicles: 2, lighting: { ma: 5, source: "measured" } },
    filters: { "q=lit": ["R2"] },
  },
  {
    path: "handsets",
    codes: codesOf(handsets),
    fresh: { code: "H9", name: "Panel", commandSystem: "blue", kind: "fixed", places: ["mid"] },
    change: { places: ["east", "mid"], state: "away" },
    filters: { "state=faulty": ["H2"], "commandSystem=blue&state=ready": ["H1"] },
  },
  {
    path: "readings",
    codes: codesOf(readings),
    fresh: {
      code: "bench-2",
      takenOn: "2027-01-10",
      origin: "bench",
      locomotive: "T3",
      state: "stalled",
      ma: 900,
    },
    change: { ma: 0, locomotive: "E7", state: "inrush", note: "Twice" },
    filters: { "locomotive=E7": ["bench-1"], "district=D-West": ["night-1"], "session=march&q=BENCH": [] },
  },
  {
    path: "members",
    codes: ["ada", "bo"],
    fresh: { code: "cy", name: "Cy Marlowe" },
    change: { passedFor: ["main line"], junior: true, roles: ["session marshal"] },
    filters: {
      "junior=true": ["bo"],
      "junior=false": ["ada"],
      "passedFor=main+line": ["ada"],
      "passedFor=yard%3B+heavy": ["ada", "bo"],
    },
  },
  {
    path: "timetables",
    codes: codesOf(timetables),
    fresh: { code: "summer", name: "Summer timetable" },
    change: { note: "Draft" },
    filters: { "q=winter": ["winter"] },
  },
  {
    path: "timetables/winter/versions/2/trains",
    codes: codesOf(winterTrains),
    fresh: { ...winterTrains[0], code: "103" },
    change: { requires: ["yard"], motivePower: [], rakes: ["R2"], placedAt: "09:30" },
    filters: {
      "section=W1": ["101", "102"],
      "locomotive=T3": ["102"],
      "rake=R2": ["102"],
      "section=M1&q=late": ["102"],
      "section=Q1": [],
    },
  },
  {
    path: "sessions",
    codes: codesOf(sessions),
    fresh: {
      ...sessions[0],
      code: "april",
      policy: null,
      slots: [{ ...sessions[0]?.slots[0], startsAt: "2027-04-17T19:00", endsAt: "2027-04-17T22:00" }],
    },
    change: { clockRatio: 6.5, areas: [], policy: { handInSeconds: 12.345 } },
    filters: {
      "from=2027-03-20T20:59:59Z": ["march"],
      "from=2027-03-20T21:00:00Z": [],
      "to=2027-03-20T19:00:00Z": [],
      "to=2027-03-20T19:00:01Z": ["march"],
      "from=2027-03-20T00:00:00%2B01:00&to=2027-03-21T00:00:00Z": ["march"],
    },
  },
];
