/**
 * When a train that runs `lengthMm` in `durationMs` at one steady speed has run `mm` of it: ms after it left, exact,
 * rounded once, halves up. Needs 0 ≤ mm ≤ lengthMm, lengthMm > 0, durationMs ≥ 0, all whole.
 */
export function msToRun(mm: number, lengthMm: number, durationMs: number): number {
  // floor(mm·d / L + 1/2) as one quotient of whole numbers: below 2^53 doubles hold both, and then the floor of the
  // rounded quotient is the true floor
  const dividend = 2 * durationMs * mm + lengthMm;
  if (dividend < Number.MAX_SAFE_INTEGER) return Math.floor(dividend / (2 * lengthMm));
  const exact = 2n * BigInt(durationMs) * BigInt(mm) + BigInt(lengthMm);
  return Number(exact / (2n * BigInt(lengthMm)));
}
