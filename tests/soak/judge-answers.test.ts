import { describe, expect, it } from "vitest";
import type { JobFact, NightFacts } from "./facts.ts";
import type { Entry, HadClaim } from "./journal.ts";
import { judgeEnding } from "./judge-ending.ts";
import { judgeHistory } from "./judge-history.ts";
import { judgeQueue } from "./judge-queue.ts";
import { judgeRefusals } from "./judge-refusals.ts";

const job = (code: string, start: number, end: number, requires: string[] = []): JobFact => ({
  code,
  kind: "train",
  startMs: start,
  endMs: end,
  requires,
  firstPlace: "P1",
  lastPlace: "P1",
  places: ["P1"],
  systems: ["club"],
});

const handset = { system: "club", state: "ready", kind: "radio", places: [], batteryMinutes: null } as const;
const byCode = <T extends { readonly code: string }>(...all: T[]) =>
  new Map(all.map((one) => [one.code, one]));
const had = (id: string, what: string, member: string, with_ = "R1"): HadClaim => ({
  id,
  job: what,
  member,
  handset: with_,
});

/** Trains `day` and `noon` at once, `eve` later and only for those passed; two handsets, one of them broken. */
function nightWith(claims: readonly HadClaim[], queue: NightFacts["queue"] = []): NightFacts {
  return {
    state: "open",
    pickUpMs: 0,
    handInMs: 0,
    members: byCode(
      { code: "ann", passedFor: ["late"], junior: false },
      { code: "bob", passedFor: [], junior: false },
      { code: "kit", passedFor: [], junior: true },
    ),
    handsets: byCode({ ...handset, code: "R1" }, { ...handset, code: "X1", state: "faulty" }),
    jobs: byCode(job("day", 0, 10), job("noon", 5, 15), job("eve", 20, 30, ["late"])),
    attending: new Set(),
    walks: new Map(),
    claims: claims.map((claim) => ({ ...claim, fromMs: 0, untilMs: 10 })),
    queue,
  };
}

const at = (sentMs: number, answeredMs: number) => ({ key: "k", sendings: 1, sentMs, answeredMs });
const got = (claim: HadClaim, sentMs: number, answeredMs: number): Entry => {
  const { member, job: what } = claim;
  return { act: "claim", member, job: what, ...at(sentMs, answeredMs), status: 201, now: [claim] };
};
const refused = (member: string, what: string, code: string, sentMs: number, more = {}): Entry => ({
  act: "claim",
  member,
  job: what,
  ...at(sentMs, sentMs + 2),
  status: 409,
  code,
  ...more,
});
const gaveBack = (claim: HadClaim, sentMs: number, next: HadClaim | null = null): Entry => {
  const { member, job: what, id } = claim;
  const now = next ? [next] : [];
  return { act: "give-back", member, job: what, gone: [id], now, ...at(sentMs, sentMs + 2), status: 200 };
};
const waited = (member: string, what: string, sentMs: number): Entry => ({
  act: "queue",
  member,
  job: what,
  ...at(sentMs, sentMs + 2),
  status: 201,
});

const annDay = had("1", "day", "ann");
const bobDay = had("2", "day", "bob");

describe("the ending", () => {
  it("is as it was told when what was accepted is there and what was given back is not", () => {
    const told = [got(annDay, 0, 2), gaveBack(annDay, 10), got(bobDay, 20, 22)];
    expect(judgeEnding(told, nightWith([bobDay]))).toEqual([]);
  });

  it.each<[string, Entry[], HadClaim[]]>([
    ["accepted, but not there: day with R1 for ann", [got(annDay, 0, 2)], []],
    ["given back, but there: day with R1 for ann", [got(annDay, 0, 2), gaveBack(annDay, 10)], [annDay]],
    ["there, but told nobody: day with R1 for bob", [], [bobDay]],
    [
      "accepted as day with R1 for ann, but there as day with R1 for bob",
      [got(annDay, 0, 2)],
      [{ ...annDay, member: "bob" }],
    ],
    ["claim of day by ann: no answer to 1", [{ ...refused("ann", "day", "", 0), status: 0 }], []],
  ])("tells of %s", (fault, told, claims) => {
    expect(judgeEnding(told, nightWith(claims))).toEqual([fault]);
  });
});

describe("a claim whose maker was answered late, by another server", () => {
  const taken: Entry = {
    act: "assign",
    member: "bob",
    job: "day",
    ...at(5, 7),
    status: 200,
    gone: ["1"],
    now: [bobDay],
  };
  const late = got(annDay, 0, 20);

  it("has ended all the same, and was never there together with the next", () => {
    expect(judgeEnding([late, taken], nightWith([bobDay]))).toEqual([]);
    expect(judgeHistory([late, taken], nightWith([bobDay]))).toEqual([]);
  });
});

describe("a claim that was traded", () => {
  const trade = (to: HadClaim, sentMs: number): Entry => ({
    act: "swap",
    member: to.member,
    job: "",
    ...at(sentMs, sentMs + 2),
    status: 200,
    now: [to],
  });
  const told = [got(annDay, 0, 2), trade({ ...annDay, member: "bob" }, 5)];

  it("is whoever's it was traded to last", () => {
    expect(judgeEnding(told, nightWith([{ ...annDay, member: "bob" }]))).toEqual([]);
    expect(judgeEnding(told, nightWith([annDay]))).toHaveLength(1);
  });

  it("may be either's, of two trades at the same time", () => {
    const twice = [...told, trade({ ...annDay, member: "kit" }, 6)];
    for (const member of ["bob", "kit"])
      expect(judgeEnding(twice, nightWith([{ ...annDay, member }]))).toEqual([]);
    expect(judgeEnding(twice, nightWith([annDay]))).toHaveLength(1);
  });
});

describe("the history", () => {
  it("has no double booking where one was given back before the other may have been made", () => {
    const told = [got(annDay, 0, 2), gaveBack(annDay, 10), got(bobDay, 11, 13)];
    expect(judgeHistory(told, nightWith([]))).toEqual([]);
  });

  it.each<[string, Entry[]]>([
    ["one job", [got(annDay, 0, 2), got(bobDay, 5, 7), gaveBack(annDay, 10)]],
    ["one member", [got(annDay, 0, 2), got(had("3", "noon", "ann", "R2"), 5, 7)]],
    ["one handset", [got(annDay, 0, 2), got(had("3", "noon", "bob"), 5, 7)]],
  ])("tells of a double booking of %s that the tables no longer show", (what, told) => {
    expect(judgeHistory(told, nightWith([])).join()).toContain(`${what}, two claims`);
  });

  it("tells of what was had after the night was locked", () => {
    const locked: Entry = { act: "lock", member: "", job: "", ...at(0, 2), status: 200 };
    expect(judgeHistory([locked, got(annDay, 5, 7)], nightWith([]))).toEqual([
      "ann got day after the night was locked",
    ]);
    expect(judgeHistory([locked, got(annDay, 1, 7)], nightWith([]))).toEqual([]);
  });
});

describe("a refusal", () => {
  const annHas = [got(annDay, 0, 2), gaveBack(annDay, 10)];

  it.each<[string, Entry]>([
    ["taken", refused("bob", "day", "taken", 5)],
    ["taken, where it may have been so just then", refused("bob", "day", "taken", 11)],
    ["not passed", refused("bob", "eve", "not-passed", 5)],
    ["driving another", refused("ann", "noon", "drives-another-then", 5)],
    ["every handset taken", refused("bob", "noon", "handset-taken", 5)],
    ["that handset not usable", refused("bob", "noon", "handset-not-usable", 5, { handset: "X1" })],
    ["a junior alone", refused("kit", "noon", "junior-alone", 20)],
  ])("is right for %s", (_, refusal) => {
    expect(judgeRefusals([...annHas, refusal], nightWith([]))).toEqual([]);
  });

  it.each<[string, Entry]>([
    ["taken, but given back long before", refused("bob", "day", "taken", 20)],
    ["not passed, who is", refused("ann", "eve", "not-passed", 5)],
    ["driving another, at another time", refused("ann", "eve", "drives-another-then", 5)],
    ["a handset taken, that is free then", refused("ann", "eve", "handset-taken", 5)],
    ["a handset not usable, that is", refused("bob", "noon", "handset-not-usable", 5, { handset: "R1" })],
    ["a junior alone, with an adult there", refused("kit", "noon", "junior-alone", 5)],
    ["an adult alone", refused("bob", "noon", "junior-alone", 20)],
    ["not open, before anybody locked it", refused("bob", "noon", "session-not-open", 5)],
    ["a rule that the night does not have", refused("bob", "noon", "second-claim-too-early", 5)],
    ["a bug", { ...refused("bob", "noon", "internal", 5), status: 500 }],
  ])("is wrong for %s", (_, refusal) => {
    expect(judgeRefusals([...annHas, refusal], nightWith([]))).toHaveLength(1);
  });

  it("is wrong where the same post is answered two ways", () => {
    const repeat: Entry = { act: "repeat", member: "bob", job: "day", ...at(5, 7), status: 201, same: false };
    expect(judgeRefusals([repeat], nightWith([]))).toEqual([
      "bob sent k twice and was told different things",
    ]);
  });
});

describe("a queue", () => {
  const passedOn = gaveBack(annDay, 20, bobDay);

  it("is kept where the first who can have it gets it, and those behind wait on", () => {
    const told = [got(annDay, 0, 2), waited("bob", "day", 5), waited("kit", "day", 10), passedOn];
    expect(judgeQueue(told, nightWith([], [{ job: "day", member: "kit" }]))).toEqual([]);
  });

  it.each<[string, Entry[], NightFacts["queue"]]>([
    ["bob was given day without waiting for it", [passedOn], []],
    [
      "bob, who waited, was passed over for nobody: day",
      [waited("bob", "day", 5), gaveBack(annDay, 20)],
      [{ job: "day", member: "bob" }],
    ],
    [
      "bob, who waited, was passed over for kit: day",
      [waited("bob", "day", 5), waited("kit", "day", 10), gaveBack(annDay, 20, had("4", "day", "kit"))],
      [{ job: "day", member: "bob" }],
    ],
    ["told to wait, but not there: bob for day", [waited("bob", "day", 5)], []],
    ["waits, but was not told so: kit for day", [], [{ job: "day", member: "kit" }]],
  ])("is broken where %s", (fault, told, queue) => {
    expect(judgeQueue([got(annDay, 0, 2), ...told], nightWith([], queue))).toEqual([fault]);
  });
});
