/** What comes up together: a train's items in a district. */
export interface RestartUnit {
  readonly train: number;
  /** For a moment, as power returns. */
  readonly inrushMa: number;
  /** From then on. */
  readonly drawsMa: number;
}

export interface RestartGroups {
  /** Trains of each group, in the order in which to bring them up; null: there is no order that the breaker bears. */
  readonly groups: readonly (readonly number[])[] | null;
  /** Whether no order has fewer groups. */
  readonly proven: boolean;
  /** Trains that the breaker does not bear even alone; empty where `groups` is given. */
  readonly tooBig: readonly number[];
}

/** Units up to which every order is looked at: 3 to the power of this. */
const MOST_EXACT = 11;

/**
 * The fewest groups in which to bring a district up again, so that what is up already and the group's inrush together stay
 * within the breaker. Exact by dynamic programming over sets of trains up to `MOST_EXACT` (as for bin packing; Korte and
 * Vygen, Combinatorial Optimization, from memory); beyond, greedily by what a train asks of the breaker beyond what it draws
 * later, largest first, and proven only where it meets the bound.
 */
export function groupForRestart(units: readonly RestartUnit[], breakerMa: number): RestartGroups {
  const tooBig = units.filter(({ inrushMa }) => inrushMa > breakerMa).map(({ train }) => train);
  if (tooBig.length > 0) return { groups: null, proven: true, tooBig };
  if (units.length <= MOST_EXACT) return exactGroups(units, breakerMa);
  const groups = greedyGroups(units, breakerMa);
  // two groups are the fewest wherever one is not enough
  return { groups, proven: groups !== null && groups.length <= 2, tooBig: [] };
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

function greedyGroups(units: readonly RestartUnit[], breakerMa: number): number[][] | null {
  let waiting = [...units].sort(
    (a, b) =>
      b.inrushMa - b.drawsMa - (a.inrushMa - a.drawsMa) || b.inrushMa - a.inrushMa || a.train - b.train,
  );
  const groups: number[][] = [];
  let upMa = 0;
  while (waiting.length > 0) {
    let room = breakerMa - upMa;
    const group: RestartUnit[] = [];
    const later: RestartUnit[] = [];
    for (const unit of waiting) {
      if (unit.inrushMa <= room) {
        room -= unit.inrushMa;
        group.push(unit);
      } else later.push(unit);
    }
    if (group.length === 0) return null;
    groups.push(group.map(({ train }) => train).sort((a, b) => a - b));
    upMa += group.reduce((sum, { drawsMa }) => sum + drawsMa, 0);
    waiting = later;
  }
  return groups;
}
