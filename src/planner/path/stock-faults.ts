import type { Plan } from "../compile-plan.ts";
import { createFinding, type Finding } from "../findings.ts";
import type { Locomotive, Train } from "../problem.ts";
import { entering } from "./train-instants.ts";

/**
 * Locomotives without a decoder that would run onto digital track, and decoders that may not run on analog track: design
 * section 6. One finding a locomotive and train, where it first would. Cost: linear in parts and motive power.
 */
export function stockFaults(plan: Plan): Finding[] {
  const { problem, motions, parts } = plan;
  const findings: Finding[] = [];
  for (let train = 0; train < problem.trains.length; train++) {
    const { power } = problem.trains[train] as Train;
    const row = motions.firstRow[train] as number;
    const end = parts.firstPart[train + 1] as number;
    const first = { digital: -1, analog: -1 };
    for (let part = end - 1; part >= (parts.firstPart[train] as number); part--)
      first[parts.analog[part] === 1 ? "analog" : "digital"] = parts.firstEntry[part] as number;
    for (const locomotive of new Set(power.map((one) => one.locomotive))) {
      const { decoder } = problem.locomotives[locomotive] as Locomotive;
      const entry = decoder === null ? first.digital : decoder.analogAllowed ? -1 : first.analog;
      if (entry < 0) continue;
      findings.push(
        createFinding({
          code: decoder === null ? "analog-only-on-digital" : "decoder-not-for-analog",
          severity: "stops",
          span: entering(plan, train, entry),
          trains: [train],
          sections: [motions.section[row + entry] as number],
          locomotives: [locomotive],
          pathEntry: entry,
        }),
      );
    }
  }
  return findings;
}
