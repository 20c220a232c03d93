import { createFinding, type Finding } from "../findings.ts";
import type { Surges } from "../load/surges.ts";
import type { District, Problem, Supply } from "../problem.ts";
import { runFaults, runFigures, runLimits } from "./run.ts";

/**
 * Wires that lose too much, leave too little or would hide a short from the breaker, at the peak that this timetable
 * causes; districts that failed their short test or have none on record. What is not written down is not judged. Cost:
 * linear in districts.
 */
export function wiringFindings(problem: Problem, surges: Surges): Finding[] {
  return problem.districts.flatMap((district, index) => [
    ...wireFindings(problem, surges, district, index),
    ...testFindings(problem, district, index),
  ]);
}

function wireFindings(problem: Problem, surges: Surges, district: District, index: number): Finding[] {
  const supply = problem.supplies[district.supply];
  if (district.wiring === null || supply === undefined) return [];
  const figures = runFigures(district.wiring, supply, surges.loadMa[index] as number);
  const limits = runLimits(problem, supply as Supply, district);
  const faults = runFaults(figures, limits);
  const atMs = surges.loadAtMs[index] as number;
  const told = { districts: [index], span: { startMs: atMs, endMs: atMs + 1 } };
  const found: Finding[] = [];
  if (faults.fault)
    found.push(
      createFinding({
        ...told,
        span: problem.slot,
        code: "district-fault-not-seen",
        severity: "stops",
        measured: Math.min(Math.round(figures.faultMa), Math.round(limits.faultMa) - 1),
        limit: Math.round(limits.faultMa),
        unit: "mA",
      }),
    );
  if (faults.volts)
    found.push(
      createFinding({
        ...told,
        code: "district-volts-too-low",
        severity: "warns",
        measured: Math.floor(100 * figures.farEndV + HAIR) / 100,
        limit: limits.farEndV,
        unit: "V",
      }),
    );
  if (faults.drop)
    found.push(
      createFinding({
        ...told,
        code: "district-drop-too-big",
        severity: "warns",
        measured: Math.ceil(100 * figures.dropV - HAIR) / 100,
        limit: Math.floor(100 * limits.dropV + HAIR) / 100,
        unit: "V",
      }),
    );
  return found;
}

function testFindings({ slot }: Problem, { tested }: District, index: number): Finding[] {
  if (tested !== "failed" && tested !== "untested") return [];
  return [
    createFinding({
      code: tested === "failed" ? "district-test-failed" : "district-not-tested",
      severity: tested === "failed" ? "stops" : "warns",
      span: slot,
      districts: [index],
    }),
  ];
}

/**
 * Volts are told in hundredths, since nobody measures them more finely, and rounded away from each other, so that what
 * fails never reads as what is asked. A hair, so that binary fractions do not make a whole figure the next one.
 */
const HAIR = 1e-6;
