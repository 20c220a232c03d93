import type { Problem, Section } from "../problem.ts";

/** The sections as number columns, for the passes that look at them row by row. Indexes as in the problem. */
export interface Track {
  readonly lengthMm: Int32Array;
  /** What its feeding forces on a train: EITHER where it can be digital or analog, or nothing feeds it. */
  readonly forces: Uint8Array;
  /** 1: one train at a time. 0: digital and marked shared. */
  readonly exclusive: Uint8Array;
  /** District that feeds a digital train in it, −1: none. */
  readonly district: Int32Array;
  /** Command system of that district's supply, −1: none. */
  readonly commandSystem: Int32Array;
  /** Infinity where there is no limit. */
  readonly maxSpeedKmh: Float64Array;
  /** Longest train that may call; NO_LIMIT_MM where it may stand out. */
  readonly mostMm: Int32Array;
}

export const EITHER = 0;
export const DIGITAL = 1;
export const ANALOG = 2;
export const NO_LIMIT_MM = 0x7fff_ffff;

/** One plain loop: columns made by `from` and a function take several times as long. Cost: linear in sections. */
export function tabulateTrack(problem: Problem): Track {
  const count = problem.sections.length;
  const track: Track = {
    lengthMm: new Int32Array(count),
    forces: new Uint8Array(count),
    exclusive: new Uint8Array(count),
    district: new Int32Array(count),
    commandSystem: new Int32Array(count),
    maxSpeedKmh: new Float64Array(count),
    mostMm: new Int32Array(count),
  };
  for (let i = 0; i < count; i++) {
    const section = problem.sections[i] as Section;
    const district = feedingDistrict(section);
    track.lengthMm[i] = section.lengthMm;
    track.forces[i] = forcedControl(section);
    track.exclusive[i] = isShared(section) ? 0 : 1;
    track.district[i] = district;
    track.commandSystem[i] = commandSystem(problem, district);
    track.maxSpeedKmh[i] = section.maxSpeedKmh || Infinity;
    track.mostMm[i] = section.mustClear ? section.lengthMm : NO_LIMIT_MM;
  }
  return track;
}

/** Digital, and marked so that trains may stand together in it. */
export function isShared({ shared, control }: Section): boolean {
  return shared && control === "digital";
}

function forcedControl({ control }: Section): number {
  if (control === "digital") return DIGITAL;
  return control === "analog" ? ANALOG : EITHER;
}

function feedingDistrict({ control, district }: Section): number {
  return control === "digital" || control === "changeover" ? district : -1;
}

function commandSystem({ districts, supplies }: Problem, district: number): number {
  if (district < 0) return -1;
  return supplies[districts[district]?.supply ?? -1]?.commandSystem ?? -1;
}
