import type { Interval, Locomotive, Output, Problem, Rake, Section, Train } from "../problem.ts";
import { type Move, movesOf } from "./covered-sections.ts";
import { ridesOf } from "./rides.ts";
import type { ScheduleFault } from "./schedule-fault.ts";
import { type Positions, positionAt, replay, type TurnToJudge } from "./selector-positions.ts";
import { coveredAt, standsOf, workersOfStock } from "./standing-stock.ts";

/** Instants of turns are whole ms, moves judged against them are not. */
const ROUNDING_MS = 1;

/** A train that must have one and the same output all the way, and the one it has. */
interface Ridden {
  readonly train: number;
  /** From the first wheel that turns to the last. */
  readonly span: Interval;
  /** Sections and when it is in them; where it stands in one between two moves, that counts. */
  readonly inside: readonly { readonly section: number; readonly span: Interval }[];
  readonly output: number;
}

/**
 * Judges a schedule by running it: turns every selector when it says, lets every train run over the panel, and looks
 * at what feeds it. A train in motion has one output on all that it covers, alone, and one that bears it where one
 * does; nobody turns a selector under it; stock that stands outside of its runs stands in sections switched off, but
 * for the time that policy gives a driver before and after; an output never meets a digital supply. Shares nothing
 * with what made the schedule. Of a faulty plan the faults may be the plan's. Empty: nothing wrong. Cost: square in
 * trains.
 */
export function judgeSchedule(problem: Problem, turns: readonly TurnToJudge[]): ScheduleFault[] {
  const { positions, faults } = replay(problem, turns);
  const rides = problem.trains.flatMap((_, train) => [
    ...ridesOf(problem, train).map((ride) => toRidden(problem, positions, train, ride)),
    ...undecidedRides(problem, train)
      .map((ride) => toRidden(problem, positions, train, ride))
      .filter(({ output }) => output >= 0),
  ]);
  for (const [at, ride] of rides.entries()) {
    faults.push(...judgeRide(problem, positions, ride));
    for (const other of rides.slice(at + 1))
      if (
        other.train !== ride.train &&
        other.output === ride.output &&
        ride.output >= 0 &&
        overlap(ride.span, other.span)
      )
        faults.push(fault("two-trains-on-output", ride, other.span.startMs));
  }
  return [
    ...faults,
    ...judgeParked(problem, positions, rides),
    ...judgeDigital(problem, positions),
    ...judgeStillDigital(problem, positions, rides),
  ];
}

/**
 * Moves over nothing but sections that can be either, put together where the train must keep an output: they are
 * rides if an output feeds them, else they are digital.
 */
function undecidedRides(problem: Problem, train: number): Move[][] {
  const rides: Move[][] = [];
  for (const move of otherMoves(problem, train)) {
    if (move.covered.some(({ section }) => (problem.sections[section] as Section).control === "digital"))
      continue;
    const last = rides.at(-1)?.at(-1);
    const keeps = last?.toEntry === move.fromEntry;
    if (keeps && move.departMs - last.arriveMs < Math.max(1, problem.policy.releaseDwellMs))
      rides.at(-1)?.push(move);
    else rides.push([move]);
  }
  return rides;
}

function otherMoves(problem: Problem, train: number): Move[] {
  const ridden = new Set(
    ridesOf(problem, train)
      .flat()
      .map(({ departMs }) => departMs),
  );
  return movesOf(problem, train).filter(({ departMs }) => !ridden.has(departMs));
}

function toRidden(problem: Problem, positions: Positions, train: number, ride: readonly Move[]): Ridden {
  const inside: { section: number; span: Interval }[] = [];
  for (const [at, { covered, departMs }] of ride.entries()) {
    const before = ride[at - 1];
    const stoodIn = before ? coveredAt(problem, problem.trains[train] as Train, before.toEntry) : [];
    for (const { section, fromMs, toMs } of covered) {
      if ((problem.sections[section] as Section).control === "dead") continue;
      const stood = inside.findLast(
        (each) =>
          each.section === section &&
          each.span.endMs === before?.arriveMs &&
          fromMs === departMs &&
          stoodIn.includes(section),
      );
      if (stood) inside.splice(inside.indexOf(stood), 1);
      inside.push({ section, span: { startMs: stood?.span.startMs ?? fromMs, endMs: toMs } });
    }
  }
  const [longest] = [...inside].sort((a, b) => lengthOf(b.span) - lengthOf(a.span));
  const output = longest ? positionAt(positions, longest.section, middle(longest.span)) : -1;
  const span = { startMs: ride[0]?.departMs ?? 0, endMs: ride.at(-1)?.arriveMs ?? 0 };
  return { train, span, inside, output };
}

function judgeRide(problem: Problem, positions: Positions, ride: Ridden): ScheduleFault[] {
  const faults: ScheduleFault[] = [];
  for (const { section, span } of ride.inside) {
    if (lengthOf(span) <= 2 * ROUNDING_MS) continue;
    const turned = positions
      .get(section)
      ?.find(({ atMs }) => atMs > span.startMs + ROUNDING_MS && atMs < span.endMs - ROUNDING_MS);
    if (turned) faults.push({ kind: "turned-in-use", section, train: ride.train, atMs: turned.atMs });
    const output = positionAt(positions, section, middle(span));
    if (output < 0) faults.push({ kind: "moves-unfed", section, train: ride.train, atMs: middle(span) });
    else if (output !== ride.output)
      faults.push({ kind: "two-outputs-under-train", section, train: ride.train, atMs: middle(span) });
  }
  // what runs before the slot is nobody's load
  const isInSlot = ride.span.endMs > problem.slot.startMs + ROUNDING_MS;
  if (ride.output >= 0 && isInSlot && isTooWeak(problem, ride))
    faults.push(fault("output-over-rating", ride, ride.span.startMs));
  return faults;
}

/** Whether its output does not bear the train, and one that could have been chosen does. */
function isTooWeak(problem: Problem, { train, inside, output }: Ridden): boolean {
  const { power, rakes } = problem.trains[train] as Train;
  let ma = 0;
  for (const engine of new Set(power.map(({ locomotive }) => locomotive)))
    ma += (problem.locomotives[engine] as Locomotive).runningMa;
  for (const rake of new Set(rakes)) ma += (problem.rakes[rake] as Rake).lightingMa;
  const bears = (index: number) => (problem.outputs[index] as Output).ratingMa >= ma;
  const reachesAll = (index: number) =>
    inside.every(({ section }) => (problem.sections[section] as Section).outputs.includes(index));
  return !bears(output) && problem.outputs.some((_, index) => bears(index) && reachesAll(index));
}

function judgeParked(problem: Problem, positions: Positions, rides: readonly Ridden[]): ScheduleFault[] {
  const { setUpMs, pickUpMs, releaseMs, handInMs } = problem.policy;
  const leadMs = Math.max(setUpMs, pickUpMs) + ROUNDING_MS;
  const tailMs = Math.max(releaseMs, handInMs) + ROUNDING_MS;
  const faults: ScheduleFault[] = [];
  const workers = workersOfStock(problem);
  for (const { train, sections, span, isBrief } of standsOf(problem)) {
    const own = rides.filter((ride) => workers[train]?.has(ride.train));
    const inHand = (section: number, atMs: number) =>
      own.some(({ inside }) =>
        inside.some(
          (each) =>
            each.section === section && atMs >= each.span.startMs - leadMs && atMs < each.span.endMs + tailMs,
        ),
      );
    for (const section of sections)
      for (const fed of fedDuring(positions, section, span)) {
        const driver = rides.find(
          (ride) => !own.includes(ride) && ride.output === fed.output && overlap(ride.span, fed.span),
        );
        if (driver) faults.push({ kind: "parked-stock-driven", section, train, atMs: driver.span.startMs });
        if (isBrief) continue;
        const looks = [
          fed.span.startMs + 2 * ROUNDING_MS,
          middle(fed.span),
          fed.span.endMs - 2 * ROUNDING_MS,
        ];
        const atMs = looks.find((ms) => ms > fed.span.startMs && ms < fed.span.endMs && !inHand(section, ms));
        if (atMs !== undefined) faults.push({ kind: "parked-stock-fed", section, train, atMs });
      }
  }
  return faults;
}

/** The parts of a span in which a selector is not off. */
function fedDuring(positions: Positions, section: number, span: Interval) {
  const parts: { output: number; span: Interval }[] = [];
  const here = positions.get(section) ?? [];
  for (const [at, { atMs, output }] of here.entries()) {
    const startMs = Math.max(span.startMs, atMs);
    const endMs = Math.min(span.endMs, here[at + 1]?.atMs ?? span.endMs);
    if (output >= 0 && startMs < endMs) parts.push({ output, span: { startMs, endMs } });
  }
  return parts;
}

/**
 * What has come over digital track into a section that can be either, and holds it, stands there digitally until set-up
 * before it, or another train with its stock, goes on over analog track.
 */
function judgeStillDigital(
  problem: Problem,
  positions: Positions,
  rides: readonly Ridden[],
): ScheduleFault[] {
  const workers = workersOfStock(problem);
  const lengthMm = (train: number) => (problem.trains[train] as Train).lengthMm;
  return standsOf(problem).flatMap(({ train, sections, span }) => {
    const cameDigital = digitalMoves(problem, train).some(({ arriveMs }) => arriveMs === span.startMs);
    return sections.flatMap((section): ScheduleFault[] => {
      const here = problem.sections[section] as Section;
      if (!cameDigital || here.control !== "changeover" || here.lengthMm < lengthMm(train)) return [];
      const next = rides
        .filter((ride) => workers[train]?.has(ride.train) && ride.span.startMs >= span.startMs)
        .filter(({ inside }) => inside.some((each) => each.section === section))
        .sort((a, b) => a.span.startMs - b.span.startMs)[0];
      if (next && lengthMm(next.train) > here.lengthMm) return [];
      const turnMs = next ? next.span.startMs - problem.policy.setUpMs : span.endMs;
      const digital = { startMs: span.startMs, endMs: Math.min(span.endMs, turnMs) };
      const fed = fedDuring(positions, section, digital).find((part) => overlap(part.span, digital));
      return fed ? [{ kind: "output-meets-digital", section, train, atMs: fed.span.startMs }] : [];
    });
  });
}

function digitalMoves(problem: Problem, train: number): Move[] {
  return otherMoves(problem, train).filter(({ covered }) =>
    covered.some(({ section }) => (problem.sections[section] as Section).control === "digital"),
  );
}

/** Over digital track a train is digital all the way from one stand to the next. */
function judgeDigital(problem: Problem, positions: Positions): ScheduleFault[] {
  return problem.trains.flatMap((_, train) =>
    digitalMoves(problem, train)
      .flatMap(({ covered }) => covered)
      .flatMap(({ section, fromMs, toMs }): ScheduleFault[] => {
        const span = { startMs: fromMs, endMs: toMs };
        const fed = fedDuring(positions, section, span).find((part) => overlap(part.span, span));
        return fed ? [{ kind: "output-meets-digital", section, train, atMs: fed.span.startMs }] : [];
      }),
  );
}

function fault(kind: ScheduleFault["kind"], ride: Ridden, atMs: number): ScheduleFault {
  return { kind, section: ride.inside[0]?.section ?? -1, train: ride.train, atMs };
}

function middle({ startMs, endMs }: Interval): number {
  return (startMs + endMs) / 2;
}

function lengthOf({ startMs, endMs }: Interval): number {
  return endMs - startMs;
}

/** By more than rounding makes. */
function overlap(a: Interval, b: Interval): boolean {
  return Math.min(a.endMs, b.endMs) - Math.max(a.startMs, b.startMs) > ROUNDING_MS;
}
