import fc from "fast-check";
import type { PlacedDemand } from "../../../src/planner/analog/extra-outputs.ts";

/**
 * Demands for outputs at random: starts close together, some sections, each reached by some outputs; now and then
 * two demands of one train. Every demand can be served alone.
 */
export function randomDemands(most: number, outputs: number, sections: number): fc.Arbitrary<PlacedDemand[]> {
  const reach = fc.array(fc.subarray(range(outputs), { minLength: 1 }), {
    minLength: sections,
    maxLength: sections,
  });
  const demand = fc.record({
    train: fc.nat(most + 2),
    startMs: fc.nat(20),
    lengthMs: fc.integer({ min: 1, max: 8 }),
    sections: fc.subarray(range(sections), { minLength: 1, maxLength: 2 }),
  });
  return fc.tuple(reach, fc.array(demand, { maxLength: most })).map(([reaches, demands]) =>
    demands
      .map(({ train, startMs, lengthMs, sections: covered }) => ({
        train,
        startMs,
        endMs: startMs + lengthMs,
        sections: covered,
        candidates: range(outputs).filter((output) =>
          covered.every((section) => reaches[section]?.includes(output)),
        ),
      }))
      .filter(({ candidates }) => candidates.length > 0),
  );
}

export function range(count: number): number[] {
  return Array.from({ length: count }, (_, at) => at);
}
