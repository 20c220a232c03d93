/** Rows in order of group, then time, then row. Group g is positions `start[g]` to before `start[g + 1]`. */
export interface GroupedRows {
  readonly start: Int32Array;
  readonly row: Int32Array;
  /** Time of each position: `time[row[i]]`, gathered. */
  readonly time: Int32Array;
}

/** Bins of more rows than this are sorted by digits instead of by insertion. */
const CROWDED = 96;
const DIGIT_BITS = 8;

/**
 * Sorts `count` rows stably by group and time. Times may be any 32-bit integers. Bucket sort: about one bin a row,
 * group by group and time slice by time slice, then insertion within each bin (Knuth, The Art of Computer
 * Programming 3, 5.2.1 and 5.2.5, from memory). Cost: linear for times spread at random; crowded bins go by radix sort, so never worse than
 * linear in rows and 32-bit digits.
 */
export function sortInGroups(
  count: number,
  group: Int32Array,
  groups: number,
  time: Int32Array,
): GroupedRows {
  const { low, high } = range(time, count);
  // one bit at least: a shift by all 32 would be none
  let slotBits = 1;
  while (groups << slotBits < count) slotBits++;
  let shift = 0;
  while (((high - low) >>> 0) >>> shift >= 1 << slotBits) shift++;

  const bins = groups << slotBits;
  const next = new Int32Array(bins + 1);
  for (let i = 0; i < count; i++) {
    const bin = ((group[i] as number) << slotBits) | (((time[i] as number) - low) >>> shift);
    next[bin + 1] = (next[bin + 1] as number) + 1;
  }
  const most = toStarts(next);

  const row = new Int32Array(count);
  const sortedTime = new Int32Array(count);
  for (let i = 0; i < count; i++) {
    const at = time[i] as number;
    const bin = ((group[i] as number) << slotBits) | ((at - low) >>> shift);
    const position = next[bin] as number;
    next[bin] = position + 1;
    row[position] = i;
    sortedTime[position] = at;
  }
  // after scattering, next[bin] is where the bin ends
  const start = new Int32Array(groups + 1);
  for (let g = 1; g <= groups; g++) start[g] = next[(g << slotBits) - 1] as number;
  const sorted = { start, row, time: sortedTime };
  if (shift > 0 && most > CROWDED) sortCrowdedBins(sorted, next, bins, low, shift);
  if (shift > 0) insertInGroups(sorted, groups);
  return sorted;
}

/** Turns counts, each in the place after its bin, into where the bins start. @returns the greatest count */
function toStarts(counts: Int32Array): number {
  let most = 0;
  let sum = 0;
  for (let i = 0; i < counts.length; i++) {
    const count = counts[i] as number;
    if (count > most) most = count;
    sum += count;
    counts[i] = sum;
  }
  return most;
}

function range(time: Int32Array, count: number): { low: number; high: number } {
  let low = count > 0 ? (time[0] as number) : 0;
  let high = low;
  for (let row = 1; row < count; row++) {
    const at = time[row] as number;
    if (at < low) low = at;
    else if (at > high) high = at;
  }
  return { low, high };
}

function insertInGroups({ start, row, time }: GroupedRows, groups: number): void {
  for (let g = 0; g < groups; g++) {
    const first = start[g] as number;
    const end = start[g + 1] as number;
    for (let i = first + 1; i < end; i++) {
      const at = time[i] as number;
      if ((time[i - 1] as number) <= at) continue;
      const moved = row[i] as number;
      let j = i - 1;
      do {
        time[j + 1] = time[j] as number;
        row[j + 1] = row[j] as number;
        j--;
      } while (j >= first && (time[j] as number) > at);
      time[j + 1] = at;
      row[j + 1] = moved;
    }
  }
}

function sortCrowdedBins(
  sorted: GroupedRows,
  binEnd: Int32Array,
  bins: number,
  low: number,
  bits: number,
): void {
  const spareRow = new Int32Array(sorted.row.length);
  const spareTime = new Int32Array(sorted.row.length);
  for (let bin = 0, first = 0; bin < bins; bin++) {
    const end = binEnd[bin] as number;
    if (end - first > CROWDED) {
      let from: Rows = { row: sorted.row, time: sorted.time };
      let to: Rows = { row: spareRow, time: spareTime };
      for (let shift = 0; shift < bits; shift += DIGIT_BITS) {
        sortByDigit(from, to, first, end, low, shift);
        [from, to] = [to, from];
      }
      if (from.row !== sorted.row) {
        sorted.row.set(from.row.subarray(first, end), first);
        sorted.time.set(from.time.subarray(first, end), first);
      }
    }
    first = end;
  }
}

interface Rows {
  readonly row: Int32Array;
  readonly time: Int32Array;
}

function sortByDigit(from: Rows, to: Rows, first: number, end: number, low: number, shift: number): void {
  const mask = (1 << DIGIT_BITS) - 1;
  const next = new Int32Array(mask + 2);
  for (let i = first; i < end; i++) {
    const digit = (((from.time[i] as number) - low) >>> shift) & mask;
    next[digit + 1] = (next[digit + 1] as number) + 1;
  }
  for (let digit = 0; digit <= mask; digit++)
    next[digit + 1] = (next[digit + 1] as number) + (next[digit] as number);
  for (let i = first; i < end; i++) {
    const at = from.time[i] as number;
    const digit = ((at - low) >>> shift) & mask;
    const position = first + (next[digit] as number);
    next[digit] = (next[digit] as number) + 1;
    to.time[position] = at;
    to.row[position] = from.row[i] as number;
  }
}
