import { type Motions, STANDS } from "./motions.ts";

// an imported constant is read from memory at each use
const NEVER = STANDS;

/**
 * When a train that runs `lengthMm` in `durationMs` at one steady speed has run `mm` of it: ms after it left, exact,
 * rounded once, halves up. Needs 0 ≤ mm ≤ lengthMm, lengthMm > 0, durationMs ≥ 0, all whole.
 */
export function msToRun(mm: number, lengthMm: number, durationMs: number): number {
  return roundRun(mm, durationMs / lengthMm, lengthMm, durationMs);
}

/** The same where many instants of one run are wanted: `msPerMm` is durationMs / lengthMm. */
export function roundRun(mm: number, msPerMm: number, lengthMm: number, durationMs: number): number {
  const near = mm * msPerMm + 0.5;
  const whole = Math.floor(near);
  const past = near - whole;
  // `near` is off by less than this: 2^31 ms with 53 bits leave 2^-22 for two roundings
  if (past > 1e-6 && past < 1 - 1e-6) return whole;
  return roundExactly(mm, lengthMm, durationMs);
}

/** floor(mm × duration / length + 1/2) as a quotient of whole numbers. */
function roundExactly(mm: number, lengthMm: number, durationMs: number): number {
  const dividend = 2 * durationMs * mm + lengthMm;
  // doubles hold both below 2^53, and then the floor of the rounded quotient is the true floor
  if (dividend < Number.MAX_SAFE_INTEGER) return Math.floor(dividend / (2 * lengthMm));
  const exact = 2n * BigInt(durationMs) * BigInt(mm) + BigInt(lengthMm);
  return Number(exact / (2n * BigInt(lengthMm)));
}

/**
 * Last instant at which the head of a timed train is at `mm` along its path, whole and not before its first call;
 * STANDS where it never passes it.
 */
export function lastInstantAt(motions: Motions, train: number, mm: number): number {
  const { callMm } = motions;
  const last = (motions.firstCall[train + 1] as number) - 1;
  if (mm >= (callMm[last] as number)) return NEVER;
  let call = motions.firstCall[train] as number;
  while ((callMm[call + 1] as number) <= mm) call++;
  return instantAfter(motions, call, mm);
}

/** First instant at which the head of a timed train is at `mm`, beyond its first call; STANDS: it never gets there. */
export function firstInstantAt(motions: Motions, train: number, mm: number): number {
  const { callMm } = motions;
  const last = (motions.firstCall[train + 1] as number) - 1;
  if (mm > (callMm[last] as number)) return NEVER;
  let call = motions.firstCall[train] as number;
  while ((callMm[call + 1] as number) < mm) call++;
  return instantAfter(motions, call, mm);
}

/** The instant at `mm` during the run that leaves `call`. */
export function instantAfter(motions: Motions, call: number, mm: number): number {
  const from = motions.callMm[call] as number;
  const departMs = motions.departMs[call] as number;
  const durationMs = (motions.arriveMs[call + 1] as number) - departMs;
  return departMs + msToRun(mm - from, (motions.callMm[call + 1] as number) - from, durationMs);
}
