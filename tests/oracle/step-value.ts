/**
 * Value of a report's curve at an instant: it holds from its instant to the next one's, and is 0 before the
 * first.
 */
export function valueAt(curve: readonly (readonly [atMs: number, value: number])[], ms: number): number {
  let value = 0;
  for (const [at, next] of curve) if (at <= ms) value = next;
  return value;
}
