import type {
  Locomotive,
  PathEntry,
  PlannerPolicy,
  Problem,
  Section,
  Train,
} from "../../src/planner/problem.ts";
import { PLAIN, plainDecoder } from "./plain-records.ts";

/** Builders for small problems: everything plain unless the test says otherwise. Times in whole seconds here. */

const POLICY: PlannerPolicy = {
  ...PLAIN.policy,
  setUpMs: 5_000,
  releaseMs: 5_000,
  releaseDwellMs: 30_000,
  pickUpMs: 60_000,
  handInMs: 30_000,
  reserve: 0.2,
};

/** One supply of one command system, one district, digital sections on it; the slot is an hour. */
export function smallProblem(given: Partial<Problem>): Problem {
  const sections = given.sections ?? [];
  return {
    ...PLAIN.problem,
    scale: 87,
    policy: POLICY,
    slot: { startMs: 0, endMs: 3_600_000 },
    sections,
    links: sections.slice(1).map((_, i) => ({ from: i, to: i + 1, oneWay: false })),
    commandSystems: [{ ...PLAIN.commandSystem, code: "C", handsets: 99 }],
    supplies: [{ ...PLAIN.supply, code: "S", commandSystem: 0, ratingMa: 10_000, accessoryMa: 0 }],
    districts: [{ ...PLAIN.district, code: "D", supply: 0, breakerMa: 10_000 }],
    controllers: [],
    outputs: [],
    locomotives: [],
    rakes: [],
    trains: [],
    ...given,
  };
}

export function policyWith(given: Partial<PlannerPolicy>): PlannerPolicy {
  return { ...POLICY, ...given };
}

export function section(code: string, lengthMm: number, given: Partial<Section> = {}): Section {
  return {
    ...PLAIN.section,
    code,
    lengthMm,
    place: -1,
    control: "digital",
    shared: false,
    district: 0,
    outputs: [],
    maxSpeedKmh: 0,
    mustClear: false,
    handStaging: false,
    ...given,
  };
}

export function locomotive(code: string, given: Partial<Locomotive> = {}): Locomotive {
  return {
    ...PLAIN.locomotive,
    decoder: plainDecoder(numberOf(code)),
    code,
    lengthMm: 200,
    runningMa: 0,
    standingMa: 0,
    maxSpeedKmh: 0,
    ...given,
  };
}

/** Another number for nearly every code, so that addresses do not clash by chance. */
function numberOf(code: string): number {
  return [...code].reduce((sum, letter) => (sum * 31 + letter.charCodeAt(0)) % 10_111, 7);
}

export function train(
  code: string,
  lengthMm: number,
  path: readonly PathEntry[],
  given: Partial<Train> = {},
): Train {
  return {
    ...PLAIN.train,
    code,
    lengthMm,
    power: [],
    rakes: [],
    path,
    placedMs: null,
    removedMs: null,
    ...given,
  };
}

/** A path entry that is not a call. */
export function through(sectionIndex: number): PathEntry {
  return { section: sectionIndex, arriveMs: null, departMs: null };
}

export function departs(sectionIndex: number, second: number): PathEntry {
  return { section: sectionIndex, arriveMs: null, departMs: second * 1_000 };
}

export function arrives(sectionIndex: number, second: number): PathEntry {
  return { section: sectionIndex, arriveMs: second * 1_000, departMs: null };
}

export function calls(sectionIndex: number, arrive: number, depart: number): PathEntry {
  return { section: sectionIndex, arriveMs: arrive * 1_000, departMs: depart * 1_000 };
}
