import { expect, it } from "vitest";
import type { ClaimFact, JobFact, NightFacts } from "./facts.ts";
import { judgeTables } from "./judge-tables.ts";

const MINUTE = 60_000;

const job = (code: string, start: number, end: number, more: Partial<JobFact> = {}): JobFact => ({
  code,
  kind: "train",
  startMs: start * MINUTE,
  endMs: end * MINUTE,
  requires: [],
  firstPlace: "P1",
  lastPlace: "P2",
  places: ["P1", "P2"],
  systems: ["club"],
  ...more,
});

const claim = (
  code: string,
  member: string,
  handset: string | null,
  from: number,
  until: number,
): ClaimFact => ({
  id: `${code} ${member}`,
  job: code,
  member,
  handset,
  fromMs: (from - 1) * MINUTE,
  untilMs: (until + 1) * MINUTE,
});

const handset = { system: "club", state: "ready", kind: "radio", places: [], batteryMinutes: null } as const;
const byCode = <T extends { readonly code: string }>(...all: T[]) =>
  new Map(all.map((one) => [one.code, one]));

/** Two trains at once, a third that starts where the first ends, 3 min later, and a fourth 3 min later elsewhere. */
const clean: NightFacts = {
  state: "open",
  pickUpMs: MINUTE,
  handInMs: MINUTE,
  members: byCode(
    { code: "ann", passedFor: ["branch"], junior: false },
    { code: "bob", passedFor: [], junior: false },
    { code: "kit", passedFor: [], junior: true },
  ),
  handsets: byCode(
    { ...handset, code: "R1" },
    { ...handset, code: "R2", batteryMinutes: 20 },
    { ...handset, code: "K1", kind: "tethered", places: ["P1"] },
    { ...handset, code: "X1", state: "faulty" },
  ),
  jobs: byCode(
    job("one", 10, 20, { requires: ["branch"] }),
    job("two", 15, 25),
    job("three", 23, 30, { firstPlace: "P2", lastPlace: "P1" }),
    job("four", 23, 30),
  ),
  attending: new Set(),
  walks: new Map([["P1>P2", 120]]),
  claims: [
    claim("one", "ann", "R1", 10, 20),
    claim("two", "kit", "R2", 15, 25),
    claim("three", "ann", "R1", 23, 30),
  ],
  queue: [{ job: "one", member: "bob" }],
};

const [one, two, three] = clean.claims as [ClaimFact, ClaimFact, ClaimFact];
const judged = (change: Partial<NightFacts>) => judgeTables({ ...clean, ...change });

it("has nothing to say of a night without a double booking", () => {
  expect(judgeTables(clean)).toEqual([]);
});

it.each<[string, Partial<NightFacts>]>([
  ["one is ann's and bob's", { claims: [one, claim("one", "bob", "R2", 10, 20)] }],
  ["ann has one and two at once", { claims: [one, { ...two, member: "ann" }] }],
  ["R1 is in one and two at once", { claims: [one, { ...two, handset: "R1" }] }],
  [
    "ann can't walk between one and four",
    { claims: [one, claim("four", "ann", "R1", 23, 30)], walks: new Map([["P2>P1", 61]]) },
  ],
  ["bob is not passed for one", { claims: [{ ...one, member: "bob" }] }],
  ["one has no handset", { claims: [{ ...one, handset: null }] }],
  ["X1 is no good for one", { claims: [{ ...one, handset: "X1" }] }],
  ["K1 is no good for two", { claims: [one, { ...two, handset: "K1" }] }],
  [
    "two is held from 900000 until 1560000, not 840000 until 1560000",
    { claims: [one, { ...two, fromMs: 15 * MINUTE }] },
  ],
  ["kit, a junior, has two with no adult there", { claims: [two] }],
  [
    "R2 won't last for one, three",
    {
      claims: [
        { ...one, handset: "R2" },
        { ...three, handset: "R2" },
      ],
    },
  ],
  ["bob waits twice for one", { queue: [...clean.queue, ...clean.queue] }],
  ["ann waits for one, which they have", { queue: [{ job: "one", member: "ann" }] }],
])("sees that %s", (fault, change) => {
  expect(judged(change)).toContain(fault);
});

it("finds that an adult who comes is enough for a junior, and that a walk as long as the time between will do", () => {
  expect(judged({ claims: [two], attending: new Set(["bob"]) })).toEqual([]);
  expect(
    judged({ claims: [one, claim("four", "ann", "R1", 23, 30)], walks: new Map([["P2>P1", 60]]) }),
  ).toEqual([]);
});
