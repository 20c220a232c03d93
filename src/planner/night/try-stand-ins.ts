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

/**
 * What another locomotive can bring about, by being slower, longer, hungrier or otherwise addressed: of the train it is put
 * into, of whatever feeds it, or never. What its kind of decoder and its other trains forbid is a hindrance (stand-in.ts),
 * and findings of plan, people and handsets are not a locomotive's doing.
 */
const BROUGHT_BY_STAND_IN = {
  // where its stock goes on to is planned for the one that failed, so that any other would seem left in the way
  "section-clash": null,
  "shared-section-too-full": null,
  "path-not-linked": null,
  "path-times-backwards": null,
  "path-too-fast": "train",
  "path-section-not-fed": null,
  "path-no-changeover": null,
  "train-longer-than-road": "train",
  "stock-elsewhere": null,
  "stock-in-two-trains": null,
  "output-none-reaches": "train",
  "outputs-too-few": "train",
  "outputs-not-decided": "train",
  "output-over-rating": "feed",
  "output-too-close": "feed",
  "controller-over-rating": "feed",
  "controller-too-close": "feed",
  "district-will-trip": "feed",
  "district-too-close": "feed",
  "supply-over-rating": "feed",
  "supply-too-close": "feed",
  "handsets-too-few": null,
  "train-outside-slot": null,
  "output-trips-on-stall": "feed",
  "district-trips-on-stall": "feed",
  "district-trips-on-restart": "feed",
  "address-refused": "train",
  // of tonight's trains, a hindrance
  "address-used-twice": null,
  "addresses-too-many": "feed",
  "handsets-too-many": null,
  "analog-only-on-digital": null,
  "decoder-not-for-analog": null,
  "train-bridges-feeds": "train",
  "return-loop-too-short": "train",
  "handset-none-usable": null,
  "handsets-do-not-fit": null,
  "handsets-not-decided": null,
  "handset-not-ready": null,
  "handset-out-of-reach": null,
  "handset-battery-short": null,
  "member-in-two-places": null,
  "walk-too-short": null,
  "driver-not-passed": null,
  "junior-unsupervised": null,
  // says how the whole evening is planned
  "section-too-busy": null,
  "district-drop-too-big": "feed",
  "district-volts-too-low": "feed",
  "district-fault-not-seen": null,
  "district-test-failed": null,
  "district-not-tested": null,
} as const satisfies Record<FindingCode, "train" | "feed" | null>;

type Brought = typeof BROUGHT_BY_STAND_IN;

/** The kinds of finding that a stand-in can be to blame for. */
export type StandInCode = { [Code in FindingCode]: Brought[Code] extends null ? never : Code }[FindingCode];

export type StandInFinding = Finding & { readonly code: StandInCode };

/**
 * For each candidate, what the check finds with it in the vacancy that it does not find with the locomotive that was
 * there: speeds, lengths, loads and addresses over the rest of the working, of each kind and place the worst. Cost: one check
 * without its report a candidate.
 */
export function tryStandIns(
  problem: Problem,
  vacancy: Vacancy,
  candidates: readonly number[],
): StandInFinding[][] {
  const known = new Set(findFaults(problem, vacancy, vacancy.locomotive).map(keyOf));
  return candidates.map((candidate) =>
    keepWorst(findFaults(problem, vacancy, candidate).filter((finding) => !known.has(keyOf(finding)))),
  );
}

function findFaults(problem: Problem, vacancy: Vacancy, locomotive: number): StandInFinding[] {
  const trains = problem.trains.map((train, i) =>
    i === vacancy.train ? manTrain(problem, train, vacancy, locomotive) : train,
  );
  return sweepPlan(compilePlan({ ...problem, trains })).findings.filter(
    (finding): finding is StandInFinding => {
      const by = BROUGHT_BY_STAND_IN[finding.code];
      if (by !== "train") return by === "feed";
      return finding.trains.includes(vacancy.train) && !isBehind(vacancy, finding.code, finding.pathEntry);
    },
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

function keepWorst(findings: readonly StandInFinding[]): StandInFinding[] {
  const worst = new Map<string, StandInFinding>();
  for (const finding of findings) {
    const key = keyOf(finding);
    const before = worst.get(key);
    if (before === undefined || (finding.measured ?? 0) > (before.measured ?? 0)) worst.set(key, finding);
  }
  return [...worst.values()];
}

const keyOf = (finding: Finding): string => {
  const { code, sections, districts, supplies, outputs, controllers, commandSystems } = finding;
  return JSON.stringify([code, sections, districts, supplies, outputs, controllers, commandSystems]);
};
