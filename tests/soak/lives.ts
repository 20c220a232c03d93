import type { Entry, HadClaim } from "./journal.ts";

/** From when to when something was there, as those who asked know it: not to the ms, as a post takes time to its answer. */
export interface Times {
  readonly bornFromMs: number;
  readonly bornByMs: number;
  /** Infinity: it was never given back. */
  readonly diesFromMs: number;
  readonly diesByMs: number;
}

export type Life = HadClaim & Times;

export interface Window {
  readonly sentMs: number;
  readonly answeredMs: number;
}

/** Every claim that an answer told of. */
export function readLives(entries: readonly Entry[]): Life[] {
  const ends = new Map(
    entries.flatMap((entry) =>
      entry.act === "give-back" && entry.status === 200 ? [[entry.id, entry] as const] : [],
    ),
  );
  return entries.flatMap((entry) => {
    const made = entry.act === "claim" ? entry.claim : entry.act === "give-back" ? entry.next : null;
    if (!made) return [];
    const end = ends.get(made.id);
    return [
      {
        ...made,
        bornFromMs: entry.sentMs,
        bornByMs: entry.answeredMs,
        diesFromMs: end?.sentMs ?? Number.POSITIVE_INFINITY,
        diesByMs: end?.answeredMs ?? Number.POSITIVE_INFINITY,
      },
    ];
  });
}

/** Whether it may have been there at some instant of the window. */
export const maybeThen = (life: Times, { sentMs, answeredMs }: Window): boolean =>
  life.bornFromMs <= answeredMs && sentMs <= life.diesByMs;

/** Whether it was there all through the window, whatever the exact instants were. */
export const surelyThroughout = (life: Times, { sentMs, answeredMs }: Window): boolean =>
  life.bornByMs < sentMs && answeredMs < life.diesFromMs;

/** Whether both were there at one instant, whatever the exact instants were. */
export const surelyTogether = (a: Times, b: Times): boolean =>
  Math.max(a.bornByMs, b.bornByMs) < Math.min(a.diesFromMs, b.diesFromMs);

export function groupBy<T, K>(all: readonly T[], key: (one: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const one of all) {
    const group = groups.get(key(one));
    if (group) group.push(one);
    else groups.set(key(one), [one]);
  }
  return groups;
}
