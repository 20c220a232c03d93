import type { Interval, Problem, Section, Train } from "../problem.ts";
import { type Move, movesOf } from "./covered-sections.ts";

/** Stock that does not move: who, where, when. */
export interface Stand {
  readonly train: number;
  readonly sections: readonly number[];
  readonly span: Interval;
  /** At a call under way, too short to give its output up. */
  readonly isBrief: boolean;
}

/**
 * Where every train stands and since when and until when, worked out anew: before its first departure in its first
 * section, at its calls and after its last arrival in all that it covers. Before it, since its stock was brought or
 * placed; after it, until the last of its stock goes on, is removed or carried to where it is wanted next. None for times that run backwards. For judging,
 * so it shares nothing with the planner's stock.
 */
export function standsOf(problem: Problem): Stand[] {
  const moves = problem.trains.map((_, train) => movesOf(problem, train));
  const lines = workings(problem, moves);
  return problem.trains.flatMap((train, index) => {
    const mine = moves[index] as Move[];
    const [first, last] = [mine[0], mine.at(-1)];
    if (!first || !last) return [];
    const { fromMs, toMs } = standingTime(problem, moves, lines, index);
    const startsIn = (train.path[0] as Train["path"][number]).section;
    const stands: Stand[] = [
      {
        train: index,
        sections: [startsIn],
        span: { startMs: fromMs, endMs: first.departMs },
        isBrief: false,
      },
    ];
    for (const [at, move] of mine.entries()) {
      const goesMs = mine[at + 1]?.departMs;
      stands.push({
        train: index,
        sections: coveredAt(problem, train, move.toEntry),
        span: { startMs: move.arriveMs, endMs: goesMs ?? toMs },
        isBrief: goesMs !== undefined && goesMs - move.arriveMs < problem.policy.releaseDwellMs,
      });
    }
    return stands.filter(({ span }) => span.startMs < span.endMs);
  });
}

/** For each train, those that have a locomotive or rake in common with it, itself among them. */
export function workersOfStock(problem: Problem): ReadonlySet<number>[] {
  const workers = new Map<string, number[]>();
  for (const train of problem.trains.keys())
    for (const item of itemsOf(problem, train)) workers.set(item, [...(workers.get(item) ?? []), train]);
  return problem.trains.map(
    (_, train) => new Set([train, ...itemsOf(problem, train).flatMap((item) => workers.get(item) ?? [])]),
  );
}

function itemsOf({ trains }: Problem, train: number): string[] {
  const { power, rakes } = trains[train] as Train;
  return [...power.map(({ locomotive }) => `engine ${locomotive}`), ...rakes.map((rake) => `rake ${rake}`)];
}

function standingTime(
  problem: Problem,
  moves: readonly Move[][],
  lines: ReadonlyMap<string, readonly number[]>,
  train: number,
): { fromMs: number; toMs: number } {
  const { placedMs, removedMs } = problem.trains[train] as Train;
  const placed = placedMs ?? problem.slot.startMs;
  const removed = removedMs ?? problem.slot.endMs;
  const departs = (index: number) => moves[index]?.[0]?.departMs ?? 0;
  const arrives = (index: number) => moves[index]?.at(-1)?.arriveMs ?? 0;
  const neighbours = [...new Set(itemsOf(problem, train))].map((item) => {
    const line = lines.get(item) ?? [];
    const at = line.indexOf(train);
    return { before: line[at - 1], after: line[at + 1] };
  });
  const brought = neighbours.flatMap(({ before }) => (before === undefined ? [] : [before]));
  const isBrought = neighbours.length > 0 && brought.length === neighbours.length;
  const carried = brought.map((before) => carriedByHand(problem, moves, before, train));
  const putDown = carried.flatMap((hand) => (hand === null ? [] : [hand.putDownMs]));
  const drivenIn = brought.filter((_, at) => carried[at] === null).map(arrives);
  const stood = isBrought ? (drivenIn.length > 0 ? [Math.max(...drivenIn)] : []) : [placed];
  const goes = neighbours.map(({ after }) => {
    if (after === undefined) return removed;
    return carriedByHand(problem, moves, train, after)?.takenMs ?? departs(after);
  });
  return {
    fromMs: Math.min(...stood, ...putDown, departs(train)),
    toMs: Math.max(arrives(train), ...(goes.length > 0 ? goes : [removed])),
  };
}

/**
 * When hands take the stock of one working off the track and put it down for the next; null where it waits for that on
 * the track. A stated removal takes it; so does a stated placing in a section that the stock is not in.
 */
function carriedByHand(problem: Problem, moves: readonly Move[][], before: number, after: number) {
  const [from, to] = [problem.trains[before] as Train, problem.trains[after] as Train];
  const last = moves[before]?.at(-1) as Move;
  const goesMs = moves[after]?.[0]?.departMs ?? 0;
  const isHere = coveredAt(problem, from, last.toEntry).includes(to.path[0]?.section ?? -1);
  const stated = from.removedMs ?? (isHere ? null : to.placedMs);
  if (stated === null) return null;
  const takenMs = Math.max(stated, last.arriveMs);
  if (takenMs >= goesMs) return null;
  return { takenMs, putDownMs: Math.min(goesMs, Math.max(takenMs, to.placedMs ?? takenMs)) };
}

/** For each item the trains that work it, as they follow. */
function workings(problem: Problem, moves: readonly Move[][]): Map<string, number[]> {
  const departs = (train: number) => moves[train]?.[0]?.departMs ?? 0;
  const arrives = (train: number) => moves[train]?.at(-1)?.arriveMs ?? 0;
  const lines = new Map<string, number[]>();
  for (const train of problem.trains.keys())
    if ((moves[train] as Move[]).length > 0)
      for (const item of new Set(itemsOf(problem, train)))
        lines.set(item, [...(lines.get(item) ?? []), train]);
  for (const line of lines.values())
    line.sort((a, b) => departs(a) - departs(b) || arrives(a) - arrives(b) || a - b);
  return lines;
}

/** The sections under a train whose head is at the end of a path entry. */
export function coveredAt({ sections }: Problem, { path, lengthMm }: Train, entry: number): number[] {
  const covered: number[] = [];
  let restMm = lengthMm;
  for (let at = entry; at >= 0 && restMm > 0; at--) {
    const { section } = path[at] as Train["path"][number];
    covered.push(section);
    restMm -= (sections[section] as Section).lengthMm;
  }
  return covered;
}
