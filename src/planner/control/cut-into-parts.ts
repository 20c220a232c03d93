import { firstDeparture, lastArrival, type Motions, STANDS } from "../motion/motions.ts";
import type { PlannerPolicy, Problem, Section } from "../problem.ts";
import { ANALOG, EITHER, type Track, tabulateTrack } from "../track/track.ts";
import { ALWAYS, type Parts } from "./parts.ts";

/**
 * Cuts every timed working at its changeover calls. A changeover point is a call in a changeover section with a dwell
 * above 0 that holds the whole train; of several in a row the first is taken. A section that forces nothing takes the
 * control of its neighbours, digital where they differ or there are none. Cost: linear in path entries.
 */
export function cutIntoParts(
  problem: Problem,
  motions: Motions,
  track: Track = tabulateTrack(problem),
): Parts {
  const { forces } = track;
  const isMixed = forces.includes(ANALOG);
  // all digital: one part a train
  const parts = allocate(motions.timed.length, isMixed ? motions.section.length : motions.timed.length);
  let part = 0;
  for (let train = 0; train < motions.timed.length; train++) {
    if (motions.timed[train] === 1)
      part = isMixed
        ? cutTrain(problem, motions, parts, forces, train, part)
        : onePart(motions, parts, train, part);
    parts.firstPart[train + 1] = part;
  }
  return parts;
}

function allocate(trains: number, most: number): Parts {
  return {
    firstPart: new Int32Array(trains + 1),
    analog: new Uint8Array(most),
    firstEntry: new Int32Array(most),
    lastEntry: new Int32Array(most),
    departMs: new Int32Array(most),
    arriveMs: new Int32Array(most),
    sinceMs: new Int32Array(most),
    untilMs: new Int32Array(most),
  };
}

function onePart(motions: Motions, parts: Parts, train: number, part: number): number {
  const entries = (motions.firstRow[train + 1] as number) - (motions.firstRow[train] as number);
  open(parts, part, 0, firstDeparture(motions, train));
  close(parts, part, entries - 1, lastArrival(motions, train));
  return part + 1;
}

/** @returns the row after its last part */
function cutTrain(
  problem: Problem,
  motions: Motions,
  parts: Parts,
  forces: Uint8Array,
  train: number,
  first: number,
): number {
  const row = motions.firstRow[train] as number;
  const entries = (motions.firstRow[train + 1] as number) - row;
  let part = first;
  let control = EITHER;
  let lastForcing = -1;
  open(parts, part, 0, firstDeparture(motions, train));
  for (let entry = 0; entry < entries; entry++) {
    const forced = forces[motions.section[row + entry] as number] as number;
    if (forced === EITHER) continue;
    if (control !== EITHER && forced !== control) {
      parts.analog[part] = control === ANALOG ? 1 : 0;
      changeOver(problem, motions, parts, { train, part, lastForcing, entry });
      part++;
    }
    control = forced;
    lastForcing = entry;
  }
  parts.analog[part] = control === ANALOG ? 1 : 0;
  close(parts, part, entries - 1, lastArrival(motions, train));
  return part + 1;
}

function open(parts: Parts, part: number, entry: number, departMs: number, sinceMs = -ALWAYS): void {
  parts.firstEntry[part] = entry;
  parts.departMs[part] = departMs;
  parts.sinceMs[part] = sinceMs;
}

function close(parts: Parts, part: number, entry: number, arriveMs: number, untilMs = ALWAYS): void {
  parts.lastEntry[part] = entry;
  parts.arriveMs[part] = arriveMs;
  parts.untilMs[part] = untilMs;
}

/** Ends `part` and opens the next between an entry of its control and the first one of the other. */
interface Crossing {
  readonly train: number;
  readonly part: number;
  readonly lastForcing: number;
  readonly entry: number;
}

function changeOver(problem: Problem, motions: Motions, parts: Parts, crossing: Crossing): void {
  const { train, part, lastForcing, entry } = crossing;
  const toDigital = parts.analog[part] === 1;
  const call = changeoverCall(problem, motions, crossing);
  if (call < 0) {
    const row = motions.firstRow[train] as number;
    const next = toDigital ? lastForcing + 1 : entry;
    const clear = motions.clearMs[row + next - 1] as number;
    close(parts, part, next - 1, clear === STANDS ? lastArrival(motions, train) : clear);
    open(parts, part + 1, next, motions.enterMs[row + next] as number);
    return;
  }
  const at = motions.callEntry[call] as number;
  const arriveMs = motions.arriveMs[call] as number;
  const departMs = motions.departMs[call] as number;
  const switchMs = changeoverMs(problem.policy, toDigital, arriveMs, departMs);
  close(parts, part, at, arriveMs, switchMs);
  open(parts, part + 1, at, departMs, switchMs);
}

function changeoverMs(policy: PlannerPolicy, toDigital: boolean, arriveMs: number, departMs: number): number {
  return toDigital
    ? Math.min(departMs, arriveMs + policy.releaseMs)
    : Math.max(arriveMs, departMs - policy.setUpMs);
}

/** First call strictly between the two entries where the train can change over, −1: none. */
function changeoverCall(problem: Problem, motions: Motions, crossing: Crossing): number {
  const { train, lastForcing, entry } = crossing;
  const end = motions.firstCall[train + 1] as number;
  for (let call = motions.firstCall[train] as number; call < end; call++) {
    const at = motions.callEntry[call] as number;
    if (at <= lastForcing || at >= entry) continue;
    const section = problem.sections[
      motions.section[(motions.firstRow[train] as number) + at] as number
    ] as Section;
    const dwells = (motions.arriveMs[call] as number) < (motions.departMs[call] as number);
    if (section.control === "changeover" && dwells && section.lengthMm >= (motions.lengthMm[train] as number))
      return call;
  }
  return -1;
}
