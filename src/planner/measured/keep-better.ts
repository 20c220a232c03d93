/**
 * Leaves out, one after the other, whatever the readings come out nearer without: of changes of single unknowns, the one
 * without which the sum of squares of what is left falls most, as long as it falls. What stays brings the readings nearer,
 * each of it beside the rest. Of equal ones the first goes. Cost: changes² × readings.
 * @param changes by how much each would change the readings, one entry a reading
 * @param differences read less planned, without any change
 * @returns which of the changes stay, in order
 */
export function keepBetter(
  changes: readonly (readonly number[])[],
  differences: readonly number[],
): readonly number[] {
  const left = differences.map(
    (difference, i) => difference - changes.reduce((sum, change) => sum + (change[i] as number), 0),
  );
  const kept = changes.map((_, at) => at);
  for (;;) {
    // (d + c)² − d² = c · (2 d + c)
    const falls = kept.map((at) =>
      left.reduce((sum, d, i) => {
        const c = (changes[at] as readonly number[])[i] as number;
        return sum - c * (2 * d + c);
      }, 0),
    );
    const most = Math.max(0, ...falls);
    if (most === 0) return kept;
    const [gone = 0] = kept.splice(falls.indexOf(most), 1);
    left.forEach((d, i) => {
      left[i] = d + ((changes[gone] as readonly number[])[i] as number);
    });
  }
}
