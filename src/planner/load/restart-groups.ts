/** What comes up together: a train's items in a district. */
export interface RestartUnit {
  readonly train: number;
  /** For a moment, as power returns; less than `drawsMa` is taken as that. */
  readonly inrushMa: number;
  /** From then on. */
  readonly drawsMa: number;
}

export interface RestartGroups {
  /** Trains of each group, in the order in which to bring them up; null: there is no order that the breaker bears. */
  readonly groups: readonly (readonly number[])[] | null;
  /** Whether no order has fewer groups, or none exists: where `groups` is null, always. */
  readonly proven: boolean;
  /** Trains that the breaker does not bear even alone; empty where `groups` is given. */
  readonly tooBig: readonly number[];
}

/** Units up to which every order is looked at: 3 to the power of this. */
const MOST_EXACT = 11;

/**
 * The fewest groups in which to bring a district up again, so that what is up already and the group's inrush together stay
 * within the breaker, and so what is drawn in the end. Exact by dynamic programming over sets of trains up to `MOST_EXACT` (as
 * for bin packing; Korte and Vygen, Combinatorial Optimization, from memory); beyond, greedily, and proven only where it
 * meets the bound. Whether there is any order at all is always exact: see `fallingOrder`.
 */
export function groupForRestart(given: readonly RestartUnit[], breakerMa: number): RestartGroups {
  const units = given.map((unit) => ({ ...unit, inrushMa: Math.max(unit.inrushMa, unit.drawsMa) }));
  const tooBig = units.filter(({ inrushMa }) => inrushMa > breakerMa).map(({ train }) => train);
  if (tooBig.length > 0) return { groups: null, proven: true, tooBig };
  if (units.length <= MOST_EXACT) return exactGroups(units, breakerMa);
  const groups = greedyGroups(units, breakerMa);
  // two groups are the fewest wherever one is not enough
  return { groups, proven: groups === null || groups.length <= 2, tooBig: [] };
}

function exactGroups(units: readonly RestartUnit[], breakerMa: number): RestartGroups {
  const all = (1 << units.length) - 1;
  const inrush = new Float64Array(all + 1);
  const draws = new Float64Array(all + 1);
  for (let set = 1; set <= all; set++) {
    const lowest = 31 - Math.clz32(set & -set);
    const rest = set & (set - 1);
    inrush[set] = (inrush[rest] as number) + (units[lowest] as RestartUnit).inrushMa;
    draws[set] = (draws[rest] as number) + (units[lowest] as RestartUnit).drawsMa;
  }
  const fewest = new Int32Array(all + 1).fill(all + 1);
  const lastGroup = new Int32Array(all + 1);
  fewest[0] = 0;
  for (let up = 0; up < all; up++) {
    const groups = fewest[up] as number;
    if (groups > all) continue;
    const open = all & ~up;
    const room = breakerMa - (draws[up] as number);
    for (let next = open; next > 0; next = (next - 1) & open) {
      if ((inrush[next] as number) > room || (fewest[up | next] as number) <= groups + 1) continue;
      fewest[up | next] = groups + 1;
      lastGroup[up | next] = next;
    }
  }
  if ((fewest[all] as number) > all) return { groups: null, proven: true, tooBig: [] };
  const groups: number[][] = [];
  for (let up = all; up > 0; up &= ~(lastGroup[up] as number)) {
    const group = lastGroup[up] as number;
    groups.unshift(units.flatMap(({ train }, at) => ((group >> at) & 1 ? [train] : [])));
  }
  return { groups, proven: true, tooBig: [] };
}

/** A unit in its place of an order of single units. */
interface Placed extends RestartUnit {
  /** What the breaker still bears beside it and all before it, when it comes up. */
  readonly slackMa: number;
}

/**
 * Whether the units can come up one at a time, and how: by what each asks of the breaker beyond what it draws later, largest
 * first. If any order of single units is borne, this one is: of two neighbours a, b the first needs most(inrush a, draws a +
 * inrush b), and with the larger difference first that is no more than the other way round. Whatever comes up together in
 * groups can also come up one by one. Null: no order.
 */
function fallingOrder(units: readonly RestartUnit[], breakerMa: number): Placed[] | null {
  const order: Placed[] = [];
  let upMa = 0;
  for (const unit of [...units].sort(
    (a, b) =>
      b.inrushMa - b.drawsMa - (a.inrushMa - a.drawsMa) || b.inrushMa - a.inrushMa || a.train - b.train,
  )) {
    const slackMa = breakerMa - upMa - unit.inrushMa;
    if (slackMa < 0) return null;
    order.push({ ...unit, slackMa });
    upMa += unit.drawsMa;
  }
  return order;
}

/**
 * Fills each group from the falling order with whatever its room takes; but one that would overtake others comes only where
 * these can still come up one by one after it. So the rest is never left without an order. Cost: units × groups.
 */
function greedyGroups(units: readonly RestartUnit[], breakerMa: number): number[][] | null {
  const groups: number[][] = [];
  let upMa = 0;
  let waiting = fallingOrder(units, breakerMa);
  while (waiting !== null && waiting.length > 0) {
    let room = breakerMa - upMa;
    // the least that the breaker bears beside any that was passed over, when its turn comes
    let slackMa = Number.POSITIVE_INFINITY;
    const group: RestartUnit[] = [];
    const later: Placed[] = [];
    for (const unit of waiting) {
      if (unit.inrushMa <= room && unit.drawsMa <= slackMa) {
        room -= unit.inrushMa;
        slackMa -= unit.drawsMa;
        group.push(unit);
      } else {
        slackMa = Math.min(slackMa, unit.slackMa);
        later.push(unit);
      }
    }
    groups.push(group.map(({ train }) => train).sort((a, b) => a - b));
    upMa += group.reduce((sum, { drawsMa }) => sum + drawsMa, 0);
    waiting = fallingOrder(later, breakerMa - upMa);
  }
  return waiting === null ? null : groups;
}
