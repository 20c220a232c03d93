import type { Entry, HadClaim } from "./journal.ts";

/** From when to when something was there, as those who asked know it: not to the ms, as a post takes time to its answer. */
export interface Times {
  readonly bornFromMs: number;
  readonly bornByMs: number;
  /** Infinity: it has no end. */
  readonly diesFromMs: number;
  readonly diesByMs: number;
}

/** A claim in one pair of hands, with one handset: when it is traded, the next life of the same claim begins. */
export type Life = HadClaim & Times;

export interface Window {
  readonly sentMs: number;
  readonly answeredMs: number;
}

const FOR_EVER: Window = { sentMs: Number.POSITIVE_INFINITY, answeredMs: Number.POSITIVE_INFINITY };

/** What became of one claim: how it was then, or null where it ended. */
export interface Turn {
  readonly claim: HadClaim | null;
  readonly entry: Entry;
}

/**
 * All that the answers tell of each claim, in order. Its making comes first and its end last, whenever they were answered:
 * one whose server was killed hears of a claim only after others may have ended it.
 */
export function readTurns(entries: readonly Entry[]): Turn[][] {
  const told = entries.flatMap((entry) => [
    ...(entry.now ?? []).map((claim) => ({ id: claim.id, claim, entry })),
    ...(entry.gone ?? []).map((id) => ({ id, claim: null, entry })),
  ]);
  const rank = ({ claim, entry: { act } }: Turn) =>
    claim === null ? 2 : act === "swap" || act === "handset" ? 1 : 0;
  return [...groupBy(told, ({ id }) => id).values()].map((turns) =>
    turns.sort((a, b) => rank(a) - rank(b) || a.entry.answeredMs - b.entry.answeredMs),
  );
}

/** Every life that an answer told of. */
export function readLives(entries: readonly Entry[]): Life[] {
  return readTurns(entries).flatMap((turns) =>
    turns.flatMap(({ claim, entry }, at) => {
      if (claim === null) return [];
      const end = turns[at + 1]?.entry ?? FOR_EVER;
      return [
        {
          ...claim,
          bornFromMs: entry.sentMs,
          bornByMs: entry.answeredMs,
          diesFromMs: end.sentMs,
          diesByMs: end.answeredMs,
        },
      ];
    }),
  );
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
