import type { AcceptedCorrections, Comparison, Estimates } from "../../../shared/estimates.ts";
import type { PlanParts } from "../../database/records/read-plan.ts";
import type { SolveNonNegative } from "../../planner/measured/fit-draws.ts";
import type { Problem } from "../../planner/problem.ts";
import { compareReadings } from "./compare.ts";
import { toEstimates } from "./estimates.ts";
import { toReplaced } from "./replaced.ts";
import type { ReadingStore, SlotAddress } from "./store.ts";

export interface ReadingDeps {
  /**
   * A slot that was read, as the planner takes it.
   * @throws Refusal unprocessable
   */
  readonly toProblem: (parts: PlanParts) => Problem;
  readonly toClock: (parts: PlanParts) => { layout(ms: number): string; ms(layoutSeconds: number): number };
  readonly solve: SolveNonNegative;
}

export type ReadingService = ReturnType<typeof createReadingService>;

export function createReadingService(store: ReadingStore, { toProblem, toClock, solve }: ReadingDeps) {
  return {
    /** @throws Refusal not-found */
    async estimate(club: string): Promise<Estimates> {
      const { locomotives, readings } = await store.readRoster(club);
      return toEstimates(locomotives, readings);
    },

    /** @throws Refusal not-found, unprocessable */
    async compare(address: SlotAddress): Promise<Comparison> {
      const { parts, log, versions } = await store.readCompared(address);
      const clock = toClock(parts);
      const problem = toProblem(parts);
      return compareReadings({
        problem,
        replaced: toReplaced(log, problem, parts.slot, clock.ms),
        readings: parts.readings,
        session: address.session,
        slot: address.slot,
        versions,
        toMs: clock.ms,
        toLayout: clock.layout,
        solve,
      });
    },

    /**
     * Makes the corrections the roster's figures, as measured; answers with what is known then.
     * @throws Refusal not-found, version-mismatch
     */
    async accept(club: string, accepted: AcceptedCorrections): Promise<Estimates> {
      await store.accept(club, accepted);
      const { locomotives, readings } = await store.readRoster(club);
      return toEstimates(locomotives, readings);
    },
  };
}
