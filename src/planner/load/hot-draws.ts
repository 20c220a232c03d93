import type { RoughDraws } from "./rough-draws.ts";

/** Lines that loads are held against: districts by index, and the sums of the supplies that feed them. */
export interface LoadLines {
  readonly supplyOf: Int32Array;
  readonly district: Float64Array;
  /** The supply's constant load is taken off already. */
  readonly supply: Float64Array;
}

/**
 * Which rough draws matter: 1 where in one of its slices the rough load of its district, or of that district's supply, is
 * above the line. The draws that do not matter are in no slice in which a true load can be above its line, so what is
 * left out with them changes no load that is. Cost: linear in draws and slices.
 */
export function hotDraws(draws: RoughDraws, lines: LoadLines): Uint8Array {
  const slices = draws.slices.count;
  const rough = addUp(draws, lines.supplyOf.length);
  const sums = new Int32Array(lines.supply.length * slices);
  for (let district = 0; district < lines.supplyOf.length; district++) {
    let sum = (lines.supplyOf[district] as number) * slices;
    let ma = 0;
    for (let at = district * slices; at < (district + 1) * slices; at++, sum++) {
      ma += rough[at] as number;
      rough[at] = ma;
      sums[sum] = (sums[sum] as number) + ma;
    }
  }
  const hot = countHot(rough, sums, lines, slices);
  const marks = new Uint8Array(draws.count);
  for (let i = 0; i < draws.count; i++) {
    const at = (draws.district[i] as number) * slices;
    const upTo = hot[at + (draws.lastSlice[i] as number)] as number;
    const first = draws.firstSlice[i] as number;
    const before = first === 0 ? 0 : (hot[at + first - 1] as number);
    marks[i] = upTo > before ? 1 : 0;
  }
  return marks;
}

/** By how much each district's rough load changes from one slice to the next. */
function addUp(draws: RoughDraws, districts: number): Int32Array {
  const slices = draws.slices.count;
  const change = new Int32Array(districts * slices);
  for (let i = 0; i < draws.count; i++) {
    const at = (draws.district[i] as number) * slices;
    const ma = draws.ma[i] as number;
    const first = at + (draws.firstSlice[i] as number);
    change[first] = (change[first] as number) + ma;
    const after = (draws.lastSlice[i] as number) + 1;
    if (after < slices) change[at + after] = (change[at + after] as number) - ma;
  }
  return change;
}

/** Turns each district's rough loads into how many of its slices up to here are hot. */
function countHot(rough: Int32Array, sums: Int32Array, lines: LoadLines, slices: number): Int32Array {
  for (let district = 0; district < lines.supplyOf.length; district++) {
    const supply = lines.supplyOf[district] as number;
    const line = lines.district[district] as number;
    const supplyLine = lines.supply[supply] as number;
    let sum = supply * slices;
    let count = 0;
    for (let at = district * slices; at < (district + 1) * slices; at++, sum++) {
      if ((rough[at] as number) > line || (sums[sum] as number) > supplyLine) count++;
      rough[at] = count;
    }
  }
  return rough;
}
