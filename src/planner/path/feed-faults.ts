import type { Plan } from "../compile-plan.ts";
import { createFinding, type Finding } from "../findings.ts";
import { callsOf } from "../motion/motions.ts";
import type { Section } from "../problem.ts";
import { entering, passing } from "./train-instants.ts";

/**
 * Path entries whose section nothing feeds: dead in this session, or digital (a changeover section in a digital part
 * too) without a district. An analog section without a selector is the output assignment's to report. Cost: linear in
 * path entries.
 */
export function feedFaults(plan: Plan): Finding[] {
  const { problem, motions, parts } = plan;
  if (!problem.sections.some(isDark)) return [];
  const findings: Finding[] = [];
  for (let train = 0; train < problem.trains.length; train++) {
    const first = motions.firstRow[train] as number;
    const end = motions.firstRow[train + 1] as number;
    for (let row = first; row < end; row++) {
      const section = motions.section[row] as number;
      const at = problem.sections[section] as Section;
      if (!isDark(at)) continue;
      if (at.control === "changeover" && !isDigitalAt(parts, train, row - first)) continue;
      findings.push(
        createFinding({
          code: "path-section-not-fed",
          severity: "stops",
          span: passing(plan, train, row - first),
          trains: [train],
          sections: [section],
          pathEntry: row - first,
        }),
      );
    }
  }
  return findings;
}

function isDark({ control, district }: Section): boolean {
  return control === "dead" || (control !== "analog" && district < 0);
}

function isDigitalAt(parts: Plan["parts"], train: number, entry: number): boolean {
  const end = parts.firstPart[train + 1] as number;
  for (let part = parts.firstPart[train] as number; part < end; part++) {
    const covers = entry >= (parts.firstEntry[part] as number) && entry <= (parts.lastEntry[part] as number);
    if (covers && parts.analog[part] === 0) return true;
  }
  return false;
}

/**
 * Places on a path where it passes between analog and digital sections without a call at which the train can change
 * over; where it stands in a changeover section that does not hold all of it, that is what is told: it would join both
 * kinds of track. Cost: linear in parts and the calls between them.
 */
export function changeoverFaults(plan: Plan): Finding[] {
  const { motions, parts } = plan;
  const findings: Finding[] = [];
  for (let train = 0; train < motions.timed.length; train++) {
    const row = motions.firstRow[train] as number;
    const end = parts.firstPart[train + 1] as number;
    for (let part = (parts.firstPart[train] as number) + 1; part < end; part++) {
      const before = parts.lastEntry[part - 1] as number;
      const entry = parts.firstEntry[part] as number;
      if (before === entry) continue;
      const standsIn = tooShortChangeover(plan, train, entry, parts.analog[part] === 0);
      if (standsIn !== null) {
        findings.push(bridging(plan, train, standsIn));
        continue;
      }
      findings.push(
        createFinding({
          code: "path-no-changeover",
          severity: "stops",
          span: entering(plan, train, entry),
          trains: [train],
          sections: [motions.section[row + before] as number, motions.section[row + entry] as number],
          pathEntry: entry,
        }),
      );
    }
  }
  return findings;
}

/**
 * Index in the path of the first changeover section by which the train passes from one kind of track to the other, in
 * which it stands and which does not hold all of it; null: it stands in none. Where digital track begins at `entry`, the
 * changeover sections lie right behind it, else before.
 */
function tooShortChangeover(plan: Plan, train: number, entry: number, toDigital: boolean): number | null {
  const { problem, motions } = plan;
  const row = motions.firstRow[train] as number;
  const isChangeover = (at: number) =>
    at >= 0 &&
    row + at < (motions.firstRow[train + 1] as number) &&
    (problem.sections[motions.section[row + at] as number] as Section).control === "changeover";
  let [from, to] = [entry, entry];
  if (toDigital) while (isChangeover(to)) to++;
  else while (isChangeover(from - 1)) from--;
  for (const { entry: at, arriveMs, departMs } of callsOf(motions, train))
    if (at >= from && at < to && arriveMs < departMs) return at;
  return null;
}

function bridging(plan: Plan, train: number, entry: number): Finding {
  const { problem, motions } = plan;
  const section = motions.section[(motions.firstRow[train] as number) + entry] as number;
  return createFinding({
    code: "train-bridges-feeds",
    severity: "stops",
    span: passing(plan, train, entry),
    trains: [train],
    sections: [section],
    measured: motions.lengthMm[train] as number,
    limit: (problem.sections[section] as Section).lengthMm,
    unit: "mm",
    pathEntry: entry,
  });
}
