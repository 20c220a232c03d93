import type { Problem } from "../problem.ts";
import type { Occupation } from "../result.ts";
import { type StockPlan, sharesStock } from "../stock/stock-plan.ts";

/** A section that must become several. */
export interface Division {
  readonly section: number;
  readonly parts: number;
}

/**
 * Shared sections in which different stock is at once, and how much: as many analog sections are needed there. Trains that the
 * same stock works one after the other are one, as for a clash (design section 4). Where stock meets only to leave coupled it
 * came in separately, and that is when it counts. Cost: sorting the occupations, then for each those that are there with it,
 * squared.
 */
export function findDivisions(
  { sections }: Problem,
  stock: StockPlan,
  occupations: readonly Occupation[],
): Division[] {
  const bySection: Occupation[][] = sections.map(() => []);
  for (const one of occupations) if (sections[one.section]?.shared) bySection[one.section]?.push(one);
  return bySection.flatMap((here, section) => {
    const parts = mostApart(here, stock);
    return parts > 1 ? [{ section, parts }] : [];
  });
}

function mostApart(occupations: readonly Occupation[], stock: StockPlan): number {
  let most = 0;
  let present: Occupation[] = [];
  for (const one of [...occupations].sort((a, b) => a.blocked.startMs - b.blocked.startMs)) {
    present = present.filter(({ blocked }) => one.blocked.startMs < blocked.endMs);
    present.push(one);
    if (present.length > most) most = Math.max(most, countApart(present, stock));
  }
  return most;
}

/** Into how many the trains fall that have no stock in common, neither directly nor by way of others. */
function countApart(present: readonly Occupation[], stock: StockPlan): number {
  let waiting = present.map(({ train }) => train);
  let count = 0;
  while (waiting.length > 0) {
    let together = waiting.slice(0, 1);
    waiting = waiting.slice(1);
    count++;
    while (together.length > 0) {
      const joined = waiting.filter((train) => together.some((other) => sharesStock(stock, train, other)));
      waiting = waiting.filter((train) => !joined.includes(train));
      together = joined;
    }
  }
  return count;
}
