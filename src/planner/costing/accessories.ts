import type { Problem } from "../problem.ts";

/** What accessories take that are fed from boosters and controllers as the railway is, mA: they take it either way. */
export function accessoriesMa({ supplies, controllers }: Problem): number {
  return [...supplies, ...controllers].reduce((sum, { accessoryMa }) => sum + accessoryMa, 0);
}
