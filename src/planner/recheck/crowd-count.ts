import type { Motions } from "../motion/motions.ts";
import { findCrowds, type Stay } from "../occupation/shared-sections.ts";
import type { Section } from "../problem.ts";
import type { StockPlan } from "../stock/stock-plan.ts";
import { isShared } from "../track/track.ts";
import type { SectionLists } from "./section-lists.ts";

/** How many crowds there are in all shared sections, counted anew where something has changed. */
export interface CrowdCount {
  total(): number;
  /** Something has changed in a section. */
  note(section: number): void;
  recount(scene: { readonly motions: Motions; readonly stock: StockPlan }, lists: SectionLists): void;
}

export function createCrowdCount(sections: readonly Section[]): CrowdCount {
  const shared = sections.map(isShared);
  const counts = new Map<number, number>();
  const changed = new Set<number>();
  let total = 0;
  return {
    total: () => total,
    note: (section) => {
      if (shared[section] === true) changed.add(section);
    },
    recount: ({ motions, stock }, lists) => {
      if (changed.size === 0) return;
      for (const section of changed) {
        const { lengthMm } = sections[section] as Section;
        const count = findCrowds(motions, stock, lengthMm, staysIn(motions, lists, section)).length;
        total += count - (counts.get(section) ?? 0);
        counts.set(section, count);
      }
      changed.clear();
    },
  };
}

function staysIn(motions: Motions, { start, blocked, rowAt }: SectionLists, section: number): Stay[] {
  const stays: Stay[] = [];
  for (let place = start[section] as number; place < (start[section + 1] as number); place++) {
    const fromMs = blocked[2 * place] as number;
    const toMs = blocked[2 * place + 1] as number;
    const train = motions.trainOfRow[rowAt[place] as number] as number;
    if (fromMs < toMs) stays.push({ train, fromMs, toMs });
  }
  return stays.sort((a, b) => a.fromMs - b.fromMs);
}
