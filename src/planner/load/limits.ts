/**
 * The line above which the reserve is eaten into: (1 − reserve) × limit, mA. Rounded to a millionth of a mA, so that a
 * share that binary fractions cannot hold (0.43 of 100) does not put the line a hair below a whole number.
 */
export function reserveLine(limitMa: number, reserve: number): number {
  return Math.round(limitMa * (1 - reserve) * 1e6) / 1e6;
}
