import type { BothWays } from "../../../shared/costing.ts";
import { toLayoutTimeText } from "../../../shared/layout-time.ts";
import type { PlanParts } from "../../database/records/read-plan.ts";
import { check } from "../../planner/check.ts";
import { accessoriesMa } from "../../planner/costing/accessories.ts";
import { costAllAnalog } from "../../planner/costing/all-analog.ts";
import { costAllDigital, type Sizes } from "../../planner/costing/all-digital.ts";
import { mostTrains } from "../../planner/costing/most-trains.ts";
import type { Problem } from "../../planner/problem.ts";
import type { SlotAddress } from "../../records/read-slot.ts";
import { toAnalogCost, toDigitalCost, toMostTrains } from "./mapper.ts";
import type { CostingStore } from "./store.ts";
import { type TimetableAddress, toWholeSlot } from "./whole-timetable.ts";

/** Taken where the club has no district or booster yet: usual sizes, common practice. */
const USUAL: Sizes = { breakerMa: 3_000, ratingMa: 5_000 };

export interface CostingDeps {
  /**
   * A slot that was read, as the planner takes it.
   * @throws Refusal unprocessable
   */
  readonly toProblem: (parts: PlanParts) => Problem;
}

export type CostingService = ReturnType<typeof createCostingService>;

export function createCostingService(store: CostingStore, { toProblem }: CostingDeps) {
  return {
    /**
     * The timetable of a stored slot costed as all-analog and as all-digital, and how far the present equipment goes.
     * @throws Refusal not-found, unprocessable
     */
    cost: async (address: SlotAddress): Promise<BothWays> =>
      costProblem(toProblem(await store.readSlot(address))),

    /**
     * The same of a timetable version from its first train to its last, whether a night has booked it or not.
     * @throws Refusal not-found, unprocessable
     */
    async costTimetable(address: TimetableAddress, clockRatio: number): Promise<BothWays> {
      const parts = toWholeSlot(await store.readTimetable(address), address, clockRatio);
      const { assumptions: assumed, ...costs } = costProblem(toProblem(parts));
      return { ...costs, assumptions: [...wholeDay(parts), ...assumed] };
    },
  };
}

function costProblem(problem: Problem): BothWays {
  const sizes = sizesOf(problem);
  const analog = toAnalogCost(problem, costAllAnalog(problem));
  const digital = toDigitalCost(problem, costAllDigital(problem, sizes), sizes);
  return {
    headline: `${digital.sentence} ${analog.sentence}`,
    analog,
    digital,
    mostTrains: toMostTrains(problem, mostTrains(problem, check(problem))),
    assumptions: assumptions(problem, sizes),
  };
}

function wholeDay({ slot, layout }: PlanParts): string[] {
  const { layoutStartSeconds, startsAt, endsAt, clockRatio, areas } = slot;
  const last = layoutStartSeconds + ((endsAt.getTime() - startsAt.getTime()) / 1_000) * clockRatio;
  const names = new Map(layout.areas.map(({ code, name }) => [code, name]));
  const run = areas.map(({ area, control }) => `${names.get(area)} ${control}`).join(", ");
  return [
    `All of the timetable runs, from ${toLayoutTimeText(layoutStartSeconds)} to ${toLayoutTimeText(last)} by a layout clock that goes ${clockRatio} times as fast as the room's.`,
    `The present equipment is taken to run ${run}.`,
  ];
}

/** The largest that the club has: what it would buy again. */
const sizesOf = ({ districts, supplies }: Problem): Sizes => ({
  breakerMa: Math.max(0, ...districts.map(({ breakerMa }) => breakerMa)) || USUAL.breakerMa,
  ratingMa: Math.max(0, ...supplies.map(({ ratingMa }) => ratingMa)) || USUAL.ratingMa,
});

const amps = (ma: number) => `${(ma / 1_000).toFixed(2)} A`;

function assumptions(problem: Problem, { breakerMa, ratingMa }: Sizes): string[] {
  const { policy } = problem;
  return [
    "The same trains, times and track both ways; nothing is laid or taken up but cuts between sections.",
    `Each new breaker opens at ${amps(breakerMa)} and each new booster gives ${amps(ratingMa)}, the largest the club has; ${Math.round(policy.reserve * 100)} % of both stays free.`,
    "All-analog, every selector reaches every output; the lists say what each output then really feeds.",
    "All-digital, districts are made along the track, each as far as its breaker and one booster bear it. That is not always the fewest: the bound says what fewer could not hold. Sections that draw nothing go with their neighbours.",
    `Accessories take ${amps(accessoriesMa(problem))} from today's boosters and controllers together, and the same either way: all-digital from whichever booster has room for them, all-analog from the transformers.`,
    "How far the equipment goes takes the timetable's own mix to grow evenly: twice the trains at once take twice of everything. An output drives one train, so more trains take more outputs.",
    "One handset in ten is a spare, at least one (common practice).",
  ];
}
