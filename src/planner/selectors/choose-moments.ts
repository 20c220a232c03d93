import type { OpenTurn, SelectorTurn } from "./schedule.ts";

/**
 * No selector is switched on longer before its train: time enough to reach for it, and near enough for the person at
 * the panel to see that the train is the one expected. Real ms.
 */
export const MOST_AHEAD_MS = 60_000;

/**
 * Gives every turn its moment within the time at which it must be made: as few moments as there can be, so that one
 * visit to the panel does as much as possible; each is as soon as all of its turns may be made. Latest first end
 * first, the classic stabbing of intervals by the fewest points (Kleinberg and Tardos, Algorithm Design, 4; from
 * memory). A section is never turned twice at one moment: its turns are apart by the use between them. By time; at
 * one moment first what is turned off, since its output may be another's at once; then by section. Cost: sorting, and turns times moments.
 */
export function chooseMoments(open: readonly OpenTurn[]): SelectorTurn[] {
  const waiting = open
    .map((turn) => ({ turn, ...window(turn) }))
    .sort((a, b) => a.endMs - b.endMs || a.startMs - b.startMs || a.turn.section - b.turn.section);
  const turns: SelectorTurn[] = [];
  let rest = waiting;
  while (rest.length > 0) {
    const pointMs = (rest[0] as (typeof rest)[number]).endMs;
    const together = rest.filter(({ startMs }) => startMs <= pointMs);
    rest = rest.filter(({ startMs }) => startMs > pointMs);
    const atMs = Math.max(...together.map(({ startMs }) => startMs));
    for (const { turn } of together) turns.push(closed(turn, atMs));
  }
  const order = ({ to }: SelectorTurn) => (to < 0 ? 0 : 1);
  return turns.sort((a, b) => a.atMs - b.atMs || order(a) - order(b) || a.section - b.section);
}

function window({ strictMs, to }: OpenTurn) {
  const { startMs, endMs } = strictMs;
  return { startMs: to < 0 ? startMs : Math.max(startMs, endMs - MOST_AHEAD_MS), endMs };
}

function closed({ section, from, to, mayMs, train, reason }: OpenTurn, atMs: number): SelectorTurn {
  return { section, from, to, atMs, mayMs, train, reason };
}
