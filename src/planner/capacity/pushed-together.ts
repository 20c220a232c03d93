import type { Motions } from "../motion/motions.ts";
import { occupancyRate } from "../occupation/headway.ts";
import { sortInGroups } from "../order/sort-in-groups.ts";
import type { Problem } from "../problem.ts";
import type { PushedTogether } from "../result.ts";
import { type OnTheWay, onTheWay } from "./on-the-way.ts";

/** Trains that follow each other in a section: the second starts no less than `gapMs` after the first. */
interface Order {
  readonly first: Int32Array;
  readonly second: Int32Array;
  readonly gapMs: Int32Array;
  readonly count: number;
}

/**
 * The whole timetable pushed together: every train's path moves as one, as early as those before it let it, and in each
 * section that takes one train they keep their order (UIC Code 406: compression; the gap of two neighbours is their
 * minimum headway there). Two that are in each other's way already keep their distance. How long that takes from the first
 * train's set-up to the last one's release, and of the slot.
 *
 * Earliest starts are longest paths: Bellman and Ford's rounds over the orders (Cormen et al., Introduction to Algorithms,
 * from memory), from the earliest departure on. They end, since the timetable itself keeps every order.
 * Cost: path entries × rounds, at most one a train and mostly few.
 */
export function pushTogether(problem: Problem, motions: Motions, exclusive: Uint8Array): PushedTogether {
  const visits = onTheWay(problem, motions);
  const windowMs = problem.slot.endMs - problem.slot.startMs;
  if (visits.count === 0) return { ms: 0, share: 0 };
  const { starts, ends } = spans(visits, problem.trains.length);
  const begins = earliest(ordersOf(visits, starts, exclusive), problem.trains.length);
  let last = 0;
  for (let train = 0; train < begins.length; train++)
    last = Math.max(last, (begins[train] as number) + (ends[train] as number) - (starts[train] as number));
  return { ms: last, share: occupancyRate(last, 0, windowMs) };
}

/** From each train's first set-up to its last release; both 0 for one without times. */
function spans({ count, train, fromMs, toMs }: OnTheWay, trains: number) {
  const starts = new Int32Array(trains);
  const ends = new Int32Array(trains);
  for (let i = 0; i < count; i++) {
    const at = train[i] as number;
    const isFirst = i === 0 || train[i - 1] !== at;
    starts[at] = isFirst ? (fromMs[i] as number) : Math.min(starts[at] as number, fromMs[i] as number);
    ends[at] = isFirst ? (toMs[i] as number) : Math.max(ends[at] as number, toMs[i] as number);
  }
  return { starts, ends };
}

/**
 * Neighbours in every section that takes one train, earliest first, so that most rounds settle most trains. Neighbours
 * that overlap as planned are held both ways.
 */
function ordersOf(visits: OnTheWay, starts: Int32Array, exclusive: Uint8Array): Order {
  const { count, train, fromMs, toMs } = visits;
  const before = neighbours(visits, exclusive);
  const byTime = sortInGroups(count, new Int32Array(count), 1, fromMs).row;
  const most = 2 * count;
  const order = { first: new Int32Array(most), second: new Int32Array(most), gapMs: new Int32Array(most) };
  let orders = 0;
  const add = (first: number, second: number, gapMs: number) => {
    order.first[orders] = first;
    order.second[orders] = second;
    order.gapMs[orders] = gapMs;
    orders++;
  };
  for (const visit of byTime) {
    const other = before[visit] as number;
    if (other < 0 || train[other] === train[visit]) continue;
    const [a, b] = [train[other] as number, train[visit] as number];
    const apartMs = (starts[b] as number) - (starts[a] as number);
    const overlapMs = (toMs[other] as number) - (fromMs[visit] as number);
    add(a, b, apartMs + Math.min(0, overlapMs));
    if (overlapMs > 0) add(b, a, -apartMs);
  }
  return { ...order, count: orders };
}

/** By visit, that which comes before it in its section, −1 for none: by beginning, then by end. */
function neighbours({ count, section, fromMs, toMs }: OnTheWay, exclusive: Uint8Array): Int32Array {
  const byEnd = sortInGroups(count, new Int32Array(count), 1, toMs).row;
  const [group, from] = [
    byEnd.map((visit) => section[visit] as number),
    byEnd.map((v) => fromMs[v] as number),
  ];
  const { start, row } = sortInGroups(count, group, exclusive.length, from);
  const before = new Int32Array(count).fill(-1);
  for (let at = 0; at < exclusive.length; at++) {
    if (exclusive[at] === 0) continue;
    for (let i = (start[at] as number) + 1; i < (start[at + 1] as number); i++)
      before[byEnd[row[i] as number] as number] = byEnd[row[i - 1] as number] as number;
  }
  return before;
}

/** When each train starts at the earliest, ms from the start of the first. */
function earliest({ first, second, gapMs, count }: Order, trains: number): Int32Array {
  const begins = new Int32Array(trains);
  for (let moved = true; moved; ) {
    moved = false;
    for (let i = 0; i < count; i++) {
      const at = (begins[first[i] as number] as number) + (gapMs[i] as number);
      if (at <= (begins[second[i] as number] as number)) continue;
      begins[second[i] as number] = at;
      moved = true;
    }
  }
  return begins;
}
