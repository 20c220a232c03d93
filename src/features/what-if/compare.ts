import type { CheckReport, FindingReport } from "../../../shared/check.ts";
import type { FindingCode } from "../../../shared/vocabulary.ts";

export interface Comparison {
  /** Findings that only the second has, in its order. */
  readonly appears: FindingReport[];
  /** Findings that only the first has. */
  readonly clears: FindingReport[];
}

/**
 * What two checks of one slot differ in. A finding is the same where it says the same of the same things, whatever its
 * figure and its moment; of two about the same things each is one of its own. Cost: linear.
 */
export function compareReports(before: CheckReport, after: CheckReport): Comparison {
  // those of one moment first, so that of two alike the one that is new is named
  const [had, has] = pairOff(before.findings, after.findings, ofOneMoment);
  const [clears, appears] = pairOff(had, has, keyOf);
  return { appears, clears };
}

/** What is left of both lists when those with equal keys are taken away two by two, the first ones first. */
function pairOff(
  some: readonly FindingReport[],
  others: readonly FindingReport[],
  key: (finding: FindingReport) => string,
): [FindingReport[], FindingReport[]] {
  return [without(some, others.map(key), key), without(others, some.map(key), key)];
}

function without(
  findings: readonly FindingReport[],
  keys: readonly string[],
  key: (finding: FindingReport) => string,
): FindingReport[] {
  const partners = new Map<string, number>();
  for (const one of keys) partners.set(one, (partners.get(one) ?? 0) + 1);
  return findings.filter((finding) => {
    const left = partners.get(key(finding)) ?? 0;
    partners.set(key(finding), left - 1);
    return left <= 0;
  });
}

const ofOneMoment = (finding: FindingReport) =>
  JSON.stringify([keyOf(finding), finding.measured, finding.atMs]);

function keyOf(finding: FindingReport): string {
  const { code, severity, sections, districts, supplies, outputs, controllers, commandSystems } = finding;
  const about = [code, severity, sections, districts, supplies, outputs, controllers, commandSystems];
  if (TOLD_APART_BY[code] === "thing") return JSON.stringify(about);
  const { trains, locomotives, rakes, members, handsets, unit, measured } = finding;
  const address = unit === "address" ? measured : null;
  return JSON.stringify([...about, trains, locomotives, rakes, members, handsets, address]);
}

/**
 * What makes two findings of a code two: a load, a need or a supply too small is one of its thing, whoever makes up its peak;
 * all else is told apart by its trains, stock and people too.
 */
const TOLD_APART_BY = {
  "section-clash": "whom",
  "shared-section-too-full": "whom",
  "path-not-linked": "whom",
  "path-times-backwards": "whom",
  "path-too-fast": "whom",
  "path-section-not-fed": "whom",
  "path-no-changeover": "whom",
  "train-longer-than-road": "whom",
  "stock-elsewhere": "whom",
  "stock-in-two-trains": "whom",
  "output-none-reaches": "whom",
  "outputs-too-few": "whom",
  "outputs-not-decided": "whom",
  "output-over-rating": "thing",
  "output-too-close": "thing",
  "controller-over-rating": "thing",
  "controller-too-close": "thing",
  "district-will-trip": "thing",
  "district-too-close": "thing",
  "supply-over-rating": "thing",
  "supply-too-close": "thing",
  "handsets-too-few": "thing",
  "train-outside-slot": "whom",
  "output-trips-on-stall": "thing",
  "district-trips-on-stall": "thing",
  "district-trips-on-restart": "thing",
  "address-refused": "whom",
  "address-used-twice": "whom",
  "addresses-too-many": "thing",
  "handsets-too-many": "thing",
  "analog-only-on-digital": "whom",
  "decoder-not-for-analog": "whom",
  "train-bridges-feeds": "whom",
  "return-loop-too-short": "whom",
  "handset-none-usable": "whom",
  "handsets-do-not-fit": "whom",
  "handsets-not-decided": "thing",
  "handset-not-ready": "whom",
  "handset-out-of-reach": "whom",
  "handset-battery-short": "whom",
  "member-in-two-places": "whom",
  "walk-too-short": "whom",
  "driver-not-passed": "whom",
  "junior-unsupervised": "whom",
  "section-too-busy": "thing",
  "district-drop-too-big": "thing",
  "district-volts-too-low": "thing",
  "district-fault-not-seen": "thing",
  "district-test-failed": "thing",
  "district-not-tested": "thing",
} satisfies Record<FindingCode, "thing" | "whom">;
