import { compilePlan } from "../compile-plan.ts";
import { handsetNeeds } from "../handsets/handset-need.ts";
import { sweepNeeds } from "../handsets/need-report.ts";
import { reserveLine } from "../load/limits.ts";
import type { Problem } from "../problem.ts";
import { accessoriesMa } from "./accessories.ts";
import { usedLocomotives } from "./all-analog.ts";
import { asDigital } from "./as-digital.ts";
import { type CostedDistrict, type CostedSupply, layFeeds } from "./lay-feeds.ts";
import { drawsOfSections } from "./section-draws.ts";
import { feedSections } from "./shared-feed.ts";

/** What running a timetable wholly digital on the same track would take. Indexes into the problem. */
export interface DigitalCost {
  /** Handsets in use at once, and with spares: one in ten, at least one (common practice). */
  readonly handsets: number;
  readonly handsetsWithSpares: number;
  /** Locomotives that have no decoder yet. */
  readonly decoders: readonly number[];
  /** All that trains draw at once, at the most, and what accessories take all the time. */
  readonly peakMa: number;
  readonly accessoriesMa: number;
  /** Districts of sections, each along the track, and what each draws at the most. */
  readonly districts: readonly CostedDistrict[];
  /** Boosters, by the districts each feeds, and what each gives at the most, the accessories fed from it included. */
  readonly supplies: readonly CostedSupply[];
  /** Fewer could not hold the peak: a bound, met or not. */
  readonly leastDistricts: number;
  readonly leastSupplies: number;
  /** Sections that draw more than one breaker, or the booster behind it, bears by themselves. */
  readonly tooMuch: readonly number[];
}

/** What a new district's breaker and a new booster would be good for, mA; the policy's reserve stays free of both. */
export interface Sizes {
  readonly breakerMa: number;
  readonly ratingMa: number;
}

/**
 * The timetable on the same track with every section digital. Districts grow along the track, each as far as its breaker,
 * and the booster behind it, bear it with the reserve free; boosters take districts side by side likewise, and accessories
 * go on whichever has room. Each load is the exact one of those sections together: a train over a joint counts in both.
 * Sections that draw nothing and are linked to none that does are in no district. See layFeeds; the bounds say how far it may
 * be off the fewest. Cost: see drawsOfSections, then for each link what its sections draw.
 */
export function costAllDigital(problem: Problem, { breakerMa, ratingMa }: Sizes): DigitalCost {
  const plan = compilePlan(asDigital(problem));
  const draws = drawsOfSections(plan);
  const boosterMa = reserveLine(ratingMa, problem.policy.reserve);
  const districtMa = Math.min(reserveLine(breakerMa, problem.policy.reserve), boosterMa);
  const accessories = accessoriesMa(problem);
  const { districts, supplies } = layFeeds(problem, draws, {
    districtMa,
    boosterMa,
    accessoriesMa: accessories,
  });
  const together = feedSections(draws);
  for (const section of problem.sections.keys()) together.put(section);
  const peakMa = together.peakMa();
  const handsets = sweepNeeds(plan.problem, handsetNeeds(plan)).groupPeak[0] ?? 0;
  return {
    handsets,
    handsetsWithSpares: handsets === 0 ? 0 : handsets + Math.max(1, Math.ceil(handsets / 10)),
    decoders: usedLocomotives(problem).filter((at) => problem.locomotives[at]?.decoder === null),
    peakMa,
    accessoriesMa: accessories,
    districts,
    supplies,
    leastDistricts: Math.ceil(peakMa / districtMa),
    leastSupplies: Math.ceil((peakMa + accessories) / boosterMa),
    tooMuch: districts
      .filter((district) => district.peakMa > districtMa)
      // it took none along but sections that draw nothing
      .map(({ sections }) => sections[0] as number)
      .sort((a, b) => a - b),
  };
}
