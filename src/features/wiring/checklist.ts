interface Tested {
  readonly name: string;
  readonly supplyName: string;
  readonly breakerMa: number;
  readonly tripDelayMs: number;
}

const amps = (ma: number) => `${(ma / 1_000).toFixed(2)} A`;

/**
 * The short test of a district: laying metal across the rails anywhere in it must open its breaker (common practice, no
 * source).
 */
export function shortTestSteps({ name, supplyName, breakerMa, tripDelayMs }: Tested): string[] {
  return [
    `Take every locomotive and lit coach off ${name}, and tell everybody what you are about to do.`,
    `Switch ${supplyName} on. See that the breaker of ${name} is set to open at ${amps(breakerMa)} after ${tripDelayMs} ms.`,
    "Lay a coin or a spanner across both rails at the end farthest from the supply, along its wires, and take it off at once.",
    "The breaker must have opened before you could. If it has not: switch off, and run nothing there until somebody has found out why.",
    "Do the same on every siding and on the far side of every set of points: a joint that has worked loose hides a short.",
    "See that the other districts stayed on: their trains would have run on.",
    "Let power return, and see that the breaker holds in.",
    "Write down the day, who tested it, and whether it passed.",
  ];
}
