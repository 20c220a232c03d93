/** A handset as a driver looks at it. */
export interface HandsetRecord {
  readonly code: string;
  readonly commandSystem: string;
  readonly kind: "tethered" | "radio" | "fixed";
  /** Where it can be used; a radio one with none can be used everywhere. */
  readonly places: readonly string[];
  /** Real ms a charge lasts; null: fed by its cable. */
  readonly batteryMs: number | null;
  readonly ready: boolean;
}

/** What a train asks of its handset: real ms, half-open. */
export interface HandsetNeed {
  readonly commandSystem: string;
  /** Every place where its path calls or passes. */
  readonly places: readonly string[];
  readonly fromMs: number;
  readonly untilMs: number;
}

/** Somebody has it then. */
export interface HandsetUse {
  readonly fromMs: number;
  readonly untilMs: number;
}

export type Unusable =
  | { readonly fault: "not-ready" }
  | { readonly fault: "other-system" }
  | { readonly fault: "out-of-reach"; readonly place: string };

/** Why a handset can't drive a train along its run, whenever it runs; null: it can. Design section 7. */
export function findUnusable(
  handset: HandsetRecord,
  need: Omit<HandsetNeed, "fromMs" | "untilMs">,
): Unusable | null {
  if (handset.commandSystem !== need.commandSystem) return { fault: "other-system" };
  if (handset.kind !== "radio" || handset.places.length > 0) {
    const place = need.places.find((one) => !handset.places.includes(one));
    if (place !== undefined) return { fault: "out-of-reach", place };
  }
  return handset.ready ? null : { fault: "not-ready" };
}

export type Unavailable<U extends HandsetUse> =
  | { readonly fault: "taken"; readonly use: U }
  | { readonly fault: "battery"; readonly awayMs: number };

/**
 * Why a handset that could drive a train is not to be had for it: in other hands then, or its charge would not last from
 * the evening's first pick-up to its last hand-in, the wanted one included; null: it is. Design section 7. Uses are those
 * of one evening. Cost: linear.
 */
export function findUnavailable<U extends HandsetUse>(
  handset: Pick<HandsetRecord, "batteryMs">,
  uses: readonly U[],
  need: HandsetUse,
): Unavailable<U> | null {
  const use = uses.find((one) => one.fromMs < need.untilMs && need.fromMs < one.untilMs);
  if (use) return { fault: "taken", use };
  if (handset.batteryMs === null) return null;
  const first = uses.reduce((least, one) => Math.min(least, one.fromMs), need.fromMs);
  const last = uses.reduce((most, one) => Math.max(most, one.untilMs), need.untilMs);
  return last - first > handset.batteryMs ? { fault: "battery", awayMs: last - first } : null;
}

/**
 * Handsets in the order in which to take them: one that the driver has anyway, then those that can be used at the fewest
 * places, so that what can be used everywhere is left for trains that need it; then by code. Cost: n log n.
 */
export function rankHandsets<H extends HandsetRecord>(handsets: readonly H[], has: ReadonlySet<string>): H[] {
  const reach = ({ kind, places }: H) =>
    kind === "radio" && places.length === 0 ? Number.POSITIVE_INFINITY : places.length;
  const wide = (handset: H) => [has.has(handset.code) ? 0 : 1, reach(handset)] as const;
  return [...handsets].sort((a, b) => {
    const [ownA, reachA] = wide(a);
    const [ownB, reachB] = wide(b);
    if (ownA !== ownB) return ownA - ownB;
    if (reachA !== reachB) return reachA < reachB ? -1 : 1;
    return a.code < b.code ? -1 : 1;
  });
}
