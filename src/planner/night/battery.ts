/** A stretch of real time, half-open, in ms. */
export interface Stretch {
  readonly fromMs: number;
  readonly toMs: number;
}

/**
 * Real ms of a charge left after a handset was in hands over these stretches since it was last charged; never below 0.
 * On the desk it is taken to use nothing. Battery life is real time: check-values section 4.
 */
export function batteryLeftMs(chargeMs: number, inHands: readonly Stretch[]): number {
  const used = inHands.reduce((sum, { fromMs, toMs }) => sum + (toMs - fromMs), 0);
  return Math.max(0, chargeMs - used);
}
