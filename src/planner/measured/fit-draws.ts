import { keepBetter } from "./keep-better.ts";
import { tellApart } from "./told-apart.ts";

/** An unknown draw: a locomotive (by index) running or standing, and what is believed of it. */
export interface Draw {
  readonly locomotive: number;
  readonly state: "running" | "standing";
  readonly ma: number;
}

/** A reading of a district: what was read, what of it is no locomotive's, and whose draws make up the rest. */
export interface DistrictReading {
  readonly ma: number;
  readonly otherMa: number;
  readonly draws: readonly Draw[];
}

/** Least squares with no value below 0: minimises the sum of squares of rows · x − right. */
export type SolveNonNegative = (
  rows: readonly (readonly number[])[],
  right: readonly number[],
) => readonly number[];

export interface Correction extends Draw {
  readonly newMa: number;
  /** Readings that it was drawing in. */
  readonly readings: number;
}

export interface Fit {
  readonly corrections: readonly Correction[];
  /** What would follow too, but with which the readings come out no nearer as long as `leftAlone` stay as they are. */
  readonly withheld: readonly Correction[];
  /** Draws that the readings do not tell apart from each other: left as they are. */
  readonly leftAlone: readonly Draw[];
  /** Root of the mean square of read less planned, mA: as believed, and with the corrections. */
  readonly beforeMa: number;
  readonly afterMa: number;
  /** Read less planned with the corrections, by reading. */
  readonly differencesMa: readonly number[];
}

/**
 * What locomotives must draw for the readings of districts to come out as near as can be (least squares, nothing
 * negative), for those draws that the readings tell apart; no prior pulls them towards the roster. Draws that the readings
 * do not tell apart take part by way of as few of them as can stand for all, and are left as they are; a correction that
 * would help only if they were corrected too is withheld. Cost: see tellApart and keepBetter, and one solve.
 */
export function fitDraws(readings: readonly DistrictReading[], solve: SolveNonNegative): Fit {
  const draws = drawsOf(readings);
  const rows: number[][] = readings.map((reading) =>
    draws.map((draw) => (reading.draws.some((other) => isSame(draw, other)) ? 1 : 0)),
  );
  const { alone, pivots } = tellApart(rows);
  const right = readings.map(({ ma, otherMa }) => ma - otherMa);
  const found =
    alone.length === 0
      ? []
      : solve(
          rows.map((row) => pivots.map((pivot) => row[pivot] as number)),
          right,
        );
  const all = alone.map((column) => ({
    ...(draws[column] as Draw),
    newMa: Math.round(found[pivots.indexOf(column)] as number),
    readings: rows.filter((row) => row[column] === 1).length,
  }));
  const before = rows.map(
    (row, i) => (right[i] as number) - row.reduce((sum, one, j) => sum + one * (draws[j] as Draw).ma, 0),
  );
  const changes = all.map(({ ma, newMa }, at) =>
    rows.map((row) => (row[alone[at] as number] as number) * (newMa - ma)),
  );
  const kept = keepBetter(changes, before);
  const differencesMa = before.map(
    (difference, i) => difference - kept.reduce((sum, at) => sum + (changes[at]?.[i] as number), 0),
  );
  return {
    corrections: kept.map((at) => all[at] as Correction),
    withheld: all.filter((_, at) => !kept.includes(at)),
    leftAlone: draws.filter((_, column) => !alone.includes(column)),
    beforeMa: rootMeanSquare(before),
    afterMa: rootMeanSquare(differencesMa),
    differencesMa,
  };
}

const isSame = (a: Draw, b: Draw) => a.locomotive === b.locomotive && a.state === b.state;

/** Every draw once, by locomotive, running before standing. */
function drawsOf(readings: readonly DistrictReading[]): Draw[] {
  const draws: Draw[] = [];
  for (const draw of readings.flatMap((reading) => reading.draws))
    if (!draws.some((other) => isSame(draw, other))) draws.push(draw);
  return draws.sort((a, b) => a.locomotive - b.locomotive || (a.state < b.state ? -1 : 1));
}

const rootMeanSquare = (values: readonly number[]) =>
  values.length === 0 ? 0 : Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length);
