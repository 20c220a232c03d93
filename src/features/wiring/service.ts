import type { CheckReport, LoadReport } from "../../../shared/check.ts";
import { latestTest } from "../../../shared/short-tests.ts";
import type { DistrictWiring, WireReport, WiringReport } from "../../../shared/wiring.ts";
import type { PlanParts } from "../../database/records/read-plan.ts";
import type { District, Problem, Supply } from "../../planner/problem.ts";
import { runFaults, runFigures, runLimits, trackVolts } from "../../planner/wiring/run.ts";
import { thinnestConductor } from "../../planner/wiring/thinnest.ts";
import { CAUTIONS } from "./cautions.ts";
import { shortTestSteps } from "./checklist.ts";
import type { SlotAddress, WiringStore } from "./store.ts";
import { sayDistrict, sayWiring } from "./wording.ts";

export interface WiringDeps {
  /**
   * A slot that was read, as the planner takes it.
   * @throws Refusal unprocessable
   */
  readonly toProblem: (parts: PlanParts) => Problem;
  /** The check of a slot that was read: what its trains draw. */
  readonly checkParts: (parts: PlanParts) => CheckReport;
}

export type WiringService = ReturnType<typeof createWiringService>;

export function createWiringService(store: WiringStore, { toProblem, checkParts }: WiringDeps) {
  return {
    /**
     * Whether the districts can be wired as they are, at the peaks of a stored slot.
     * @throws Refusal not-found, unprocessable
     */
    async report(address: SlotAddress): Promise<WiringReport> {
      const parts = await store.readSlot(address);
      const problem = toProblem(parts);
      const loads = checkParts(parts).districts;
      const districts = problem.districts.map((district, at) =>
        toDistrict({ parts, problem, district, at, load: loads[at] }),
      );
      const { least, most, survived } = trackVolts(problem.scale);
      return {
        headline: sayWiring(districts),
        leastV: least,
        mostV: most,
        survivedV: survived,
        districts,
        cautions: [...CAUTIONS],
      };
    },
  };
}

interface Looked {
  readonly parts: PlanParts;
  readonly problem: Problem;
  readonly district: District;
  readonly at: number;
  readonly load: LoadReport | undefined;
}

function toDistrict({ parts, problem, district, at, load }: Looked): DistrictWiring {
  const { layout } = parts;
  const record = layout.districts[at];
  const supply = problem.supplies[district.supply] as Supply;
  const supplyName = layout.supplies[district.supply]?.name ?? supply.code;
  const peakMa = load?.peakMa ?? 0;
  const wire = record?.wiring
    ? toWire({ problem, district, supply, peakMa, conductor: record.wiring.conductor })
    : null;
  const told = {
    code: district.code,
    name: record?.name ?? district.code,
    supply: supply.code,
    supplyName,
    supplyVolts: supply.volts,
    sourceOhm: supply.sourceOhm,
    breakerMa: district.breakerMa,
    tripDelayMs: district.tripDelayMs,
    peakMa,
    peakLayout: load?.peakLayout ?? "00:00",
    wire,
    test: latestTest(layout.shortTests ?? [], district.code) ?? null,
  };
  return { ...told, ...sayDistrict(told), checklist: shortTestSteps(told) };
}

interface Wired {
  readonly problem: Problem;
  readonly district: District;
  readonly supply: Supply;
  readonly peakMa: number;
  readonly conductor: WireReport["conductor"];
}

function toWire({ problem, district, supply, peakMa, conductor }: Wired): WireReport | null {
  const { wiring } = district;
  if (wiring === null) return null;
  const figures = runFigures(wiring, supply, peakMa);
  const limits = runLimits(problem, supply, district);
  const faults = runFaults(figures, limits);
  const round = (value: number, by: number) => Math.round(value * by) / by;
  return {
    conductor,
    lengthMm: wiring.lengthMm,
    temperatureC: wiring.temperatureC,
    loopOhm: round(figures.loopOhm, 10_000),
    dropV: round(figures.dropV, 1_000),
    dropLimitV: round(limits.dropV, 1_000),
    farEndV: round(figures.farEndV, 1_000),
    faultMa: Number.isFinite(figures.faultMa) ? Math.round(figures.faultMa) : null,
    faultLimitMa: Math.round(limits.faultMa),
    dropFails: faults.drop,
    voltsFail: faults.volts,
    faultFails: faults.fault,
    thinnest: thinnestConductor(wiring, supply, peakMa, limits),
  };
}
