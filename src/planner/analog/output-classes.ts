import type { Demand } from "./demand.ts";

/**
 * Which outputs are interchangeable for what is still to come: `classes[k][o]` is equal for two outputs when
 * exactly the same demands of `order` from position k on could take them. Class 0: none can. Outputs are
 * positions in `outputs`. Cost O(demands × outputs), time and memory.
 */
export function outputClasses(
  demands: readonly Demand[],
  order: readonly number[],
  outputs: readonly number[],
): Int32Array[] {
  const position = new Map(outputs.map((output, at) => [output, at]));
  const classes: Int32Array[] = new Array(order.length + 1);
  let after = new Int32Array(outputs.length);
  classes[order.length] = after;
  for (let k = order.length - 1; k >= 0; k--) {
    const split = after.slice();
    // every class falls into those whose outputs this demand could take and the rest; only the former get a new
    // number
    const renamed = new Map<number, number>();
    let next = Math.max(0, ...after) + 1;
    for (const output of (demands[order[k] as number] as Demand).candidates) {
      const at = position.get(output) as number;
      const old = after[at] as number;
      const name = renamed.get(old) ?? next++;
      renamed.set(old, name);
      split[at] = name;
    }
    classes[k] = split;
    after = split;
  }
  return classes;
}
