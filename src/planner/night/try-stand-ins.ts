import { compilePlan } from "../compile-plan.ts";
import type { Finding, FindingCode } from "../findings.ts";
import type { Problem, Train } from "../problem.ts";
import { sweepPlan } from "../sweep.ts";

/** Which locomotive of which train is to be replaced, and from which entry of its path on. Indexes into the problem. */
export interface Vacancy {
  readonly train: number;
  readonly locomotive: number;
  readonly fromEntry: number;
}

// what another locomotive can bring about: it is slower, longer, or draws more
const OF_TRAINS: ReadonlySet<FindingCode> = new Set([
  "path-too-fast",
  "path-no-changeover",
  "train-longer-than-road",
]);
const OF_LOADS: ReadonlySet<FindingCode> = new Set([
  "district-will-trip",
  "district-too-close",
  "supply-over-rating",
  "supply-too-close",
  "output-over-rating",
  "output-too-close",
  "controller-over-rating",
  "controller-too-close",
]);

/**
 * For each candidate, what the check finds with it in the vacancy that it does not find with the locomotive that was
 * there: speeds, lengths and loads over the rest of the working, of each kind and place the worst. Cost: one check without its report a candidate.
 */
export function tryStandIns(problem: Problem, vacancy: Vacancy, candidates: readonly number[]): Finding[][] {
  const known = new Set(findFaults(problem, vacancy, vacancy.locomotive).map(keyOf));
  return candidates.map((candidate) =>
    keepWorst(findFaults(problem, vacancy, candidate).filter((finding) => !known.has(keyOf(finding)))),
  );
}

function findFaults(problem: Problem, vacancy: Vacancy, locomotive: number): Finding[] {
  const trains = problem.trains.map((train, i) =>
    i === vacancy.train ? manTrain(problem, train, vacancy, locomotive) : train,
  );
  return sweepPlan(compilePlan({ ...problem, trains })).findings.filter(
    ({ code, trains: whose, pathEntry }) =>
      OF_LOADS.has(code) ||
      (OF_TRAINS.has(code) && whose.includes(vacancy.train) && !isBehind(vacancy, code, pathEntry)),
  );
}

/** A train that has departed from a call on its way does not stand there any more. */
const isBehind = ({ fromEntry }: Vacancy, code: FindingCode, pathEntry: number | null) =>
  code === "train-longer-than-road" && fromEntry > 0 && pathEntry === 0;

function manTrain(problem: Problem, train: Train, vacancy: Vacancy, locomotive: number): Train {
  const lengthOf = (index: number) => problem.locomotives[index]?.lengthMm ?? 0;
  return {
    ...train,
    lengthMm: train.lengthMm - lengthOf(vacancy.locomotive) + lengthOf(locomotive),
    power: train.power.map((place) =>
      place.locomotive === vacancy.locomotive ? { ...place, locomotive } : place,
    ),
    path: train.path.slice(vacancy.fromEntry),
  };
}

function keepWorst(findings: readonly Finding[]): Finding[] {
  const worst = new Map<string, Finding>();
  for (const finding of findings) {
    const key = keyOf(finding);
    const before = worst.get(key);
    if (before === undefined || (finding.measured ?? 0) > (before.measured ?? 0)) worst.set(key, finding);
  }
  return [...worst.values()];
}

const keyOf = ({ code, sections, districts, supplies, outputs, controllers }: Finding): string =>
  JSON.stringify([code, sections, districts, supplies, outputs, controllers]);
