import type { Problem } from "../problem.ts";

/**
 * The same railway with every section digital, each a district of its own on one supply of one command system. Limits mean
 * nothing: only what is drawn is asked.
 */
export function asDigital(problem: Problem): Problem {
  const [system] = problem.commandSystems;
  return {
    ...problem,
    commandSystems: [
      system ?? {
        code: "all",
        handsets: 0,
        mostHandsets: 0,
        mostAddresses: 0,
        shortAddressMost: 127,
        longAddressMost: 10_239,
      },
    ],
    supplies: [{ code: "all", commandSystem: 0, ratingMa: 1, accessoryMa: 0, volts: 1, sourceOhm: 0 }],
    districts: problem.sections.map(({ code }) => ({
      code,
      supply: 0,
      breakerMa: 1,
      tripDelayMs: 0,
      wiring: null,
      tested: "unsaid",
    })),
    sections: problem.sections.map((section, at) => ({ ...section, control: "digital", district: at })),
  };
}
