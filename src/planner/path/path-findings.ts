import type { Plan } from "../compile-plan.ts";
import type { Finding } from "../findings.ts";
import { changeoverFaults, feedFaults } from "./feed-faults.ts";
import { linkFaults } from "./link-faults.ts";
import { loopFaults } from "./loop-faults.ts";
import { roadFaults } from "./road-faults.ts";
import { speedFaults } from "./speed-faults.ts";
import { stockFaults } from "./stock-faults.ts";
import { backwardsTimes, lateTrains } from "./time-faults.ts";

/** What is wrong with each train's path by itself. A train whose times run backwards is judged on its sections only. */
export function pathFindings(plan: Plan): Finding[] {
  return [
    ...linkFaults(plan),
    ...backwardsTimes(plan),
    ...lateTrains(plan),
    ...speedFaults(plan),
    ...feedFaults(plan),
    ...changeoverFaults(plan),
    ...roadFaults(plan),
    ...stockFaults(plan),
    ...loopFaults(plan),
  ];
}
