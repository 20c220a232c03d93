import type { WalkTime } from "./walking.ts";

/** A stretch of somebody's evening: ms, half-open; the places where it begins and ends, null: nowhere in particular. */
export interface Engagement {
  readonly fromMs: number;
  readonly untilMs: number;
  readonly startPlace: string | null;
  readonly endPlace: string | null;
}

/** Why two things are not for one person. */
export type Collision<E extends Engagement> =
  | { readonly kind: "together"; readonly other: E }
  | {
      readonly kind: "walk";
      readonly other: E;
      /** Whether the other comes first. */
      readonly otherFirst: boolean;
      readonly needMs: number;
      readonly haveMs: number;
    };

/**
 * The first of what somebody has that the wanted thing can't be beside: at the same time, or too near for the walk from
 * where one ends to where the other begins. A gap as long as the walk is enough. What is at the same time is named
 * before what is too near. Cost: linear.
 */
export function findCollision<E extends Engagement>(
  has: readonly E[],
  wanted: Engagement,
  walk: WalkTime,
): Collision<E> | null {
  const together = has.find((other) => other.fromMs < wanted.untilMs && wanted.fromMs < other.untilMs);
  if (together) return { kind: "together", other: together };
  for (const other of has) {
    const otherFirst = other.untilMs <= wanted.fromMs;
    const [first, then] = otherFirst ? [other, wanted] : [wanted, other];
    const haveMs = then.fromMs - first.untilMs;
    const needMs = walk(first.endPlace, then.startPlace);
    if (haveMs < needMs) return { kind: "walk", other, otherFirst, needMs, haveMs };
  }
  return null;
}

/** The latest of what somebody has that ends before the wanted thing begins. */
export function findBefore<E extends Engagement>(has: readonly E[], fromMs: number): E | null {
  return has.reduce<E | null>(
    (latest, one) =>
      one.untilMs <= fromMs && (latest === null || one.untilMs > latest.untilMs) ? one : latest,
    null,
  );
}
