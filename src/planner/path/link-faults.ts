import type { Plan } from "../compile-plan.ts";
import { createFinding, type Finding } from "../findings.ts";
import { canFollow, tabulateJoints } from "./joints.ts";
import { entering } from "./train-instants.ts";

/** Path entries that no link joins to the one before: the train cannot get there. Cost: linear in path entries. */
export function linkFaults(plan: Plan): Finding[] {
  const { problem, motions } = plan;
  const { firstRow, section } = motions;
  const joints = tabulateJoints(problem.sections.length, problem.links);
  const findings: Finding[] = [];
  for (let train = 0; train < problem.trains.length; train++) {
    const first = firstRow[train] as number;
    const end = firstRow[train + 1] as number;
    for (let row = first + 1; row < end; row++) {
      const from = section[row - 1] as number;
      const to = section[row] as number;
      if (canFollow(joints, from, to)) continue;
      findings.push(
        createFinding({
          code: "path-not-linked",
          severity: "stops",
          span: entering(plan, train, row - first),
          trains: [train],
          sections: [from, to],
          pathEntry: row - first,
        }),
      );
    }
  }
  return findings;
}
