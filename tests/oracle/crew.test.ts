import { expect, test } from "vitest";
import { check } from "../../src/planner/check.ts";
import type { Handset, Problem, Turn } from "../../src/planner/problem.ts";
import { canShare, isGood, type Wish } from "./exhaustive-sharing.ts";
import { journey, runsBackwards } from "./journey.ts";
import { forRandomPlans, PATIENCE_MS, SHAPES } from "./plans.ts";

/** The plan with three people and four handsets, in hands and reaching as its own figures happen to say. */
function withCrew(problem: Problem): Problem {
  let state = problem.trains.reduce((sum, { lengthMm, path }) => sum * 31 + lengthMm + path.length, 11);
  const draw = (most: number) => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fff_ffff;
    return (state >> 8) % (most + 1);
  };
  const handsets = ["a", "b", "c", "d"].map((code): Handset => {
    const places = [0, 1, 2].filter(() => draw(3) > 0);
    const [kind, lasts] = [draw(2), draw(3)];
    return {
      code,
      commandSystem: draw(1),
      kind: kind === 0 ? "radio" : "tethered",
      places: kind === 0 ? [] : places,
      batteryMs: lasts === 0 ? 400 : null,
      ready: draw(5) > 0,
    };
  });
  const turns = problem.trains.map(
    (_, train): Turn => ({ train, member: draw(2), handset: draw(3) === 0 ? draw(3) : -1 }),
  );
  return {
    ...problem,
    places: ["west", "mid", "east"].map((code, at) => ({ code, xMm: at * 60, yMm: 0 })),
    handsets,
    commandSystems: problem.commandSystems.map((one, system) => ({
      ...one,
      handsets: handsets.filter(({ ready, commandSystem }) => ready && commandSystem === system).length,
    })),
    trains: problem.trains.map((one) => ({ ...one, requires: ["x", "y"].filter(() => draw(2) === 0) })),
    crew: {
      members: ["ada", "ben", "cy"].map((code) => ({
        code,
        passedFor: ["x", "y"].filter(() => draw(2) > 0),
        junior: draw(1) === 0,
      })),
      turns,
      isSupervised: draw(1) === 0,
    },
  };
}

const forDigital = (problem: Problem) =>
  problem.sections.every(({ control }) => control === "digital" || control === "dead");

/** When somebody has a handset in hand for a train. */
function inHand(problem: Problem, train: number) {
  const { startMs, endMs } = journey(problem, problem.trains[train] as Problem["trains"][number]);
  return { startMs: startMs - problem.policy.pickUpMs, endMs: endMs + problem.policy.handInMs };
}

test("handsets are shared out, or told not to be, exactly where trying every way says so", {
  timeout: PATIENCE_MS,
}, () => {
  let [impossible, shared, withClaims] = [0, 0, 0];
  forRandomPlans("sharing out handsets", (plain) => {
    if (!forDigital(plain)) return;
    const problem = withCrew(plain);
    const charges = problem.handsets.map(({ batteryMs }) => batteryMs);
    const { findings, handsets } = check(problem, { mostFindings: 1_000_000 });
    problem.commandSystems.forEach((_, system) => {
      const told = (code: string) =>
        findings.filter((one) => one.code === code && one.commandSystems.includes(system));
      const sharing = handsets[system]?.sharing;
      if (!problem.handsets.some((one) => one.commandSystem === system)) {
        expect(sharing).toEqual({ status: "not-listed", turns: [] });
        expect([...told("handset-none-usable"), ...told("handsets-do-not-fit")]).toEqual([]);
        return;
      }
      const wishes = wishesOf(problem, system);
      const none = wishes.filter(({ candidates }) => candidates.length === 0);
      // where nothing is ready, there are too few by number, and that is told of alone
      const anyReady = problem.handsets.some((one) => one.ready && one.commandSystem === system);
      expect(
        told("handset-none-usable")
          .flatMap(({ trains }) => trains)
          .sort(),
      ).toEqual(anyReady ? none.map(({ train }) => train).sort() : []);
      const rest = wishes.filter(({ candidates }) => candidates.length > 0);
      const [proof, ...more] = told("handsets-do-not-fit");
      expect(more).toEqual([]);
      // too few by number is told of as that alone
      const tooFew = told("handsets-too-few").length > 0;
      expect(proof === undefined).toBe(tooFew || canShare(rest, charges));
      const isWhole = !tooFew && proof === undefined && none.length === 0;
      expect(sharing?.status).toBe(isWhole ? "shared" : "impossible");
      const turns = sharing?.turns ?? [];
      if (!tooFew && proof === undefined) {
        const given = rest.map(({ train }) => turns.find((turn) => turn.train === train)?.handset ?? -1);
        expect(turns).toHaveLength(rest.length);
        expect(rest.every(({ candidates }, at) => candidates.includes(given[at] as number))).toBe(true);
        expect(isGood(rest, given, charges)).toBe(true);
        shared += rest.length;
        withClaims += turns.filter(({ isClaimed }) => isClaimed).length;
      }
      if (proof === undefined) return;
      impossible++;
      const named = rest.filter(({ train }) => proof.trains.includes(train));
      expect(canShare(named, charges)).toBe(false);
      // none of the trains named could be left out
      for (const left of named)
        expect(
          canShare(
            named.filter((one) => one !== left),
            charges,
          ),
        ).toBe(true);
    });
  });
  expect(impossible).toBeGreaterThan(0);
  expect(shared).toBeGreaterThan(100);
  expect(withClaims).toBeGreaterThan(10);
});

/** Each train that needs a handset of the system, and the one it has, or those that reach everywhere it comes by on that system. */
function wishesOf(problem: Problem, system: number): Wish[] {
  return problem.trains.flatMap((train, at) => {
    if (runsBackwards(train)) return [];
    const driven = train.path.flatMap(({ section }) => {
      const one = problem.sections[section];
      const supply = one?.control === "digital" ? problem.districts[one.district]?.supply : undefined;
      return one && problem.supplies[supply ?? -1]?.commandSystem === system ? [one.place] : [];
    });
    if (driven.length === 0) return [];
    const span = inHand(problem, at);
    const own = problem.crew.turns.find((turn) => turn.train === at)?.handset ?? -1;
    const isClaimed = problem.handsets[own]?.commandSystem === system;
    const candidates = problem.handsets.flatMap((one, handset) => {
      const reaches =
        (one.kind === "radio" && one.places.length === 0) ||
        driven.every((place) => place < 0 || one.places.includes(place));
      const lasts = one.batteryMs === null || span.endMs - span.startMs <= one.batteryMs;
      return one.ready && one.commandSystem === system && reaches && lasts ? [handset] : [];
    });
    return [{ train: at, ...span, candidates: isClaimed ? [own] : candidates, isClaimed }];
  });
}

test("who is in two places, not passed or without an adult is found by looking at every millisecond", {
  timeout: PATIENCE_MS,
}, () => {
  let found = 0;
  forRandomPlans("people", (plain) => {
    const problem = withCrew(plain);
    const { findings } = check(problem, { mostFindings: 1_000_000 });
    const told = (code: string) =>
      findings
        .filter((one) => one.code === code)
        .map(({ trains, members }) => `${[...trains].sort((a, b) => a - b)} by ${members}`)
        .sort();
    const { members, turns, isSupervised } = problem.crew;
    const running = turns.filter(({ train }) => !runsBackwards(problem.trains[train] as never));
    const who = (member: number) => members[member] as (typeof members)[number];
    const expected = (is: (turn: Turn) => boolean) =>
      running.filter(is).map(({ train, member }) => `${train} by ${member}`);
    const notPassed = expected(({ train, member }) =>
      (problem.trains[train]?.requires ?? []).some((tag) => !who(member).passedFor.includes(tag)),
    );
    const alone = expected(({ member }) => who(member).junior && !isSupervised);
    const twice = new Set<string>();
    for (const a of running)
      for (const b of running)
        if (a.train < b.train && a.member === b.member && meet(problem, a.train, b.train))
          twice.add(`${a.train},${b.train} by ${a.member}`);
    expect(told("driver-not-passed")).toEqual(notPassed.sort());
    expect(told("junior-unsupervised")).toEqual(alone.sort());
    expect(told("member-in-two-places")).toEqual([...twice].sort());
    found += notPassed.length + alone.length + twice.size;
  });
  expect(found).toBeGreaterThan(Object.keys(SHAPES).length * 10);
});

/** Whether some millisecond has both in hand. */
function meet(problem: Problem, a: number, b: number): boolean {
  const [first, second] = [inHand(problem, a), inHand(problem, b)];
  for (let ms = first.startMs; ms < first.endMs; ms++)
    if (second.startMs <= ms && ms < second.endMs) return true;
  return false;
}
