/** Prints rows under their heads, columns flush right. */
export function printTable(heads: readonly string[], rows: readonly (readonly (string | number)[])[]): void {
  const texts = [heads, ...rows].map((row) => row.map(String));
  const widths = heads.map((_, i) => Math.max(...texts.map((row) => row[i]?.length ?? 0)));
  for (const row of texts) console.log(row.map((text, i) => text.padStart(widths[i] ?? 0)).join("  "));
}

/** Milliseconds with three figures that count. */
export function ms(value: number): string {
  return value.toPrecision(3);
}

export function times(ratio: number): string {
  return `${ratio >= 10 ? ratio.toFixed(0) : ratio.toFixed(1)}x`;
}
