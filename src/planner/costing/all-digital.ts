import { compilePlan } from "../compile-plan.ts";
import { handsetNeeds } from "../handsets/handset-need.ts";
import { sweepNeeds } from "../handsets/need-report.ts";
import { createLoadScene, digitalLoad } from "../load/digital-load.ts";
import { sweepLoads } from "../load/load-sweep.ts";
import type { Problem } from "../problem.ts";
import { coverage } from "../sweep.ts";
import { usedLocomotives } from "./all-analog.ts";

/** What running a timetable wholly digital on the same track would take. Indexes into the problem. */
export interface DigitalCost {
  /** Handsets in use at once, and with spares: one in ten, at least one (common practice). */
  readonly handsets: number;
  readonly handsetsWithSpares: number;
  /** Locomotives that have no decoder yet. */
  readonly decoders: readonly number[];
  /** All that is drawn at once, at the most. */
  readonly peakMa: number;
  /** Districts of sections, each along the track, and what each draws at the most. */
  readonly districts: readonly { readonly sections: readonly number[]; readonly peakMa: number }[];
  /** Boosters, by the districts each feeds, and what each gives at the most. */
  readonly supplies: readonly { readonly districts: readonly number[]; readonly peakMa: number }[];
  /** Fewer could not hold the peak: a bound, met or not. */
  readonly leastDistricts: number;
  readonly leastSupplies: number;
  /** Sections that draw more than one breaker bears by themselves. */
  readonly tooMuch: readonly number[];
}

/** What a new district's breaker and a new booster would be good for, mA; the policy's reserve stays free of both. */
export interface Sizes {
  readonly breakerMa: number;
  readonly ratingMa: number;
}

/**
 * The timetable on the same track with every section digital. Districts are made along the track from where its links begin,
 * each as long as its breaker bears it with the reserve free; boosters take districts in that order likewise. Each load is
 * the exact one of those sections together: a train over a joint counts in both. Greedy, so not always the fewest; the bound
 * says how far that may be off. Cost: a load sweep for each section.
 */
export function costAllDigital(problem: Problem, sizes: Sizes): DigitalCost {
  const free = 1 - problem.policy.reserve;
  const order = alongTrack(problem);
  const peakOf = (groups: readonly number[]) => peaksOf(problem, groups);
  const districtOf = new Array<number>(problem.sections.length).fill(-1);
  const districts: { sections: number[]; peakMa: number }[] = [];
  const tooMuch: number[] = [];
  for (const section of order) {
    const current = districts.at(-1);
    districtOf[section] = Math.max(0, districts.length - 1);
    const together = current ? (peakOf(districtOf)[districts.length - 1] ?? 0) : Number.POSITIVE_INFINITY;
    if (current && together <= sizes.breakerMa * free) {
      current.sections.push(section);
      current.peakMa = together;
      continue;
    }
    districtOf[section] = districts.length;
    const alone = peakOf(districtOf)[districts.length] ?? 0;
    if (alone > sizes.breakerMa * free) tooMuch.push(section);
    districts.push({ sections: [section], peakMa: alone });
  }
  const [all = 0] = peakOf(problem.sections.map(() => 0));
  const supplies: { districts: number[]; peakMa: number }[] = [];
  const supplyOf = new Array<number>(districts.length).fill(-1);
  for (const at of districts.keys()) {
    const current = supplies.at(-1);
    supplyOf[at] = Math.max(0, supplies.length - 1);
    const together = current
      ? (suppliesOf(problem, districtOf, supplyOf)[supplies.length - 1] ?? 0)
      : Number.POSITIVE_INFINITY;
    if (current && together <= sizes.ratingMa * free) {
      current.districts.push(at);
      current.peakMa = together;
      continue;
    }
    supplyOf[at] = supplies.length;
    supplies.push({
      districts: [at],
      peakMa: suppliesOf(problem, districtOf, supplyOf)[supplies.length] ?? 0,
    });
  }
  const plan = compilePlan(
    asDigital(
      problem,
      problem.sections.map(() => 0),
      [0],
    ),
  );
  const handsets = sweepNeeds(plan.problem, handsetNeeds(plan)).groupPeak[0] ?? 0;
  return {
    handsets,
    handsetsWithSpares: handsets === 0 ? 0 : handsets + Math.max(1, Math.ceil(handsets / 10)),
    decoders: usedLocomotives(problem).filter((at) => problem.locomotives[at]?.decoder === null),
    peakMa: all,
    districts,
    supplies,
    leastDistricts: all === 0 ? 0 : Math.ceil(all / (sizes.breakerMa * free)),
    leastSupplies: all === 0 ? 0 : Math.ceil(all / (sizes.ratingMa * free)),
    tooMuch,
  };
}

/** Peak of each group of sections; −1: in none yet. */
function peaksOf(problem: Problem, groups: readonly number[]): Int32Array {
  return loadsOf(
    problem,
    groups,
    groups.map(() => 0),
  ).keyPeak;
}

/** Peak of each booster over its districts together; a train over a joint of two of them counts in both. */
function suppliesOf(
  problem: Problem,
  districtOf: readonly number[],
  supplyOf: readonly number[],
): Int32Array {
  return loadsOf(problem, districtOf, supplyOf).groupPeak;
}

function loadsOf(problem: Problem, districtOf: readonly number[], supplyOf: readonly number[]) {
  const digital = asDigital(problem, districtOf, supplyOf);
  const plan = compilePlan(digital);
  const scene = createLoadScene(plan);
  return sweepLoads(digital, digitalLoad(scene), coverage(digital, plan.motions, plan.stock)).steps;
}

function asDigital(problem: Problem, districtOf: readonly number[], supplyOf: readonly number[]): Problem {
  const districts = Math.max(0, ...districtOf) + 1;
  // what no booster has yet is fed by one of its own
  const supplies = Math.max(0, ...supplyOf) + 2;
  const [system] = problem.commandSystems;
  return {
    ...problem,
    commandSystems: [
      system ?? {
        code: "all",
        handsets: 0,
        mostHandsets: 0,
        mostAddresses: 0,
        shortAddressMost: 127,
        longAddressMost: 10_239,
      },
    ],
    supplies: Array.from({ length: supplies }, (_, at) => ({
      code: `${at}`,
      commandSystem: 0,
      ratingMa: 1,
      accessoryMa: 0,
      volts: 1,
      sourceOhm: 0,
    })),
    districts: Array.from({ length: districts }, (_, at) => ({
      code: `${at}`,
      supply: supplyOf[at] !== undefined && supplyOf[at] >= 0 ? supplyOf[at] : supplies - 1,
      breakerMa: 1,
      tripDelayMs: 0,
      wiring: null,
      tested: "unsaid",
    })),
    sections: problem.sections.map((section, at) => ({
      ...section,
      control: "digital",
      district: districtOf[at] ?? -1,
    })),
  };
}

/** Sections in the order in which one meets them along the links, from the first; what cannot be reached begins anew. */
function alongTrack({ sections, links }: Problem): number[] {
  const beside = sections.map((): number[] => []);
  for (const { from, to } of links) {
    beside[from]?.push(to);
    beside[to]?.push(from);
  }
  const order: number[] = [];
  const seen = new Set<number>();
  for (const start of sections.keys()) {
    const waiting = [start];
    for (let at = waiting.shift(); at !== undefined; at = waiting.shift()) {
      if (seen.has(at)) continue;
      seen.add(at);
      order.push(at);
      waiting.push(...[...(beside[at] ?? [])].sort((a, b) => a - b));
    }
  }
  return order;
}
