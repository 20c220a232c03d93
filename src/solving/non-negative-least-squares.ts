import { fcnnlsVector } from "ml-fcnnls";

/**
 * Values of at least 0 for which rows · x is nearest to `right` (least squares). Before: the columns are independent. The
 * method: Van Benthem and Keenan 2004, an active-set one.
 */
export function solveNonNegative(
  rows: readonly (readonly number[])[],
  right: readonly number[],
): readonly number[] {
  const matrix = rows.map((row) => [...row]);
  return fcnnlsVector(matrix, [...right]).K.to1DArray();
}
