import type { SelectorSchedule, SelectorTurn } from "../../../shared/selector-schedule.ts";
import type { PlanParts } from "../../database/records/read-plan.ts";
import type { Problem } from "../../planner/problem.ts";
import type {
  SelectorSchedule as Planned,
  SelectorTurn as PlannedTurn,
} from "../../planner/selectors/schedule.ts";
import type { PanelPlan } from "./plan-panel.ts";

/** What the slot's two clocks show, ms since the session's start. */
export interface Clocks {
  layout(ms: number): string;
  instant(ms: number): string | null;
}

interface Told {
  readonly parts: PlanParts;
  readonly problem: Problem;
  readonly clocks: Clocks;
}

/** The schedule in the words, codes and clocks of people. */
export function toSelectorSchedule(plan: PanelPlan, told: Told): SelectorSchedule {
  const { parts, problem, clocks } = told;
  const schedule: Planned = plan.status === "made" ? plan.schedule : { turns: [], bands: [] };
  const { made, atLeast } = plan.status === "made" ? plan.turns : { made: 0, atLeast: 0 };
  const selectors = new Set(schedule.turns.map(({ section }) => section)).size;
  const moments = toMoments(schedule, told);
  const { startMs, endMs } = problem.slot;
  return {
    status: plan.status,
    headline: toHeadline(plan, selectors, moments.length),
    slot: {
      startMs,
      endMs,
      layoutStart: clocks.layout(startMs),
      layoutEnd: clocks.layout(endMs),
      startsAt: clocks.instant(startMs),
      endsAt: clocks.instant(endMs),
    },
    clockRatio: parts.slot.clockRatio,
    turns: made,
    turnsAtLeast: atLeast,
    proven: plan.status === "made" && made === atLeast,
    selectors,
    outputs: parts.layout.controllers.flatMap((controller) =>
      controller.outputs.map(({ code, name }) => ({ code, name, controller: controller.code })),
    ),
    moments,
    sections: toSections(schedule, told),
    reasons: "reasons" in plan ? plan.reasons.map(({ sentence, cure }) => ({ sentence, cure })) : [],
  };
}

function toMoments({ turns }: Planned, { problem, clocks }: Told): SelectorSchedule["moments"] {
  const byTime = new Map<number, PlannedTurn[]>();
  for (const turn of turns) {
    const together = byTime.get(turn.atMs);
    if (together) together.push(turn);
    else byTime.set(turn.atMs, [turn]);
  }
  return [...byTime].map(([atMs, together]) => ({
    atMs,
    at: clocks.layout(atMs),
    startsAt: clocks.instant(atMs),
    mayFrom: clocks.layout(Math.max(...together.map(({ mayMs }) => mayMs.startMs))),
    mayTo: clocks.layout(Math.min(...together.map(({ mayMs }) => mayMs.endMs))),
    turns: together.map((turn) => toTurn(turn, problem, clocks)),
  }));
}

function toTurn(turn: PlannedTurn, problem: Problem, clocks: Clocks): SelectorTurn {
  const positionOf = (output: number) => problem.outputs[output]?.code ?? null;
  const { startMs, endMs } = turn.mayMs;
  return {
    section: problem.sections[turn.section]?.code ?? "?",
    from: positionOf(turn.from),
    to: positionOf(turn.to),
    train: problem.trains[turn.train]?.code ?? "?",
    reason: turn.reason,
    mayFromMs: startMs,
    mayToMs: endMs,
    mayFrom: clocks.layout(startMs),
    mayTo: clocks.layout(endMs),
  };
}

function toSections(
  { turns, bands }: Planned,
  { parts, problem, clocks }: Told,
): SelectorSchedule["sections"] {
  const turned = new Set(turns.map(({ section }) => section));
  return [...turned]
    .sort((a, b) => a - b)
    .map((section) => ({
      code: problem.sections[section]?.code ?? "?",
      name: parts.layout.sections[section]?.name ?? "?",
      turns: turns.filter((turn) => turn.section === section).length,
      bands: bands
        .filter((band) => band.section === section)
        .map(({ output, span }) => ({
          output: problem.outputs[output]?.code ?? "?",
          fromMs: span.startMs,
          toMs: span.endMs,
          from: clocks.layout(span.startMs),
          to: clocks.layout(span.endMs),
        })),
    }));
}

const count = (n: number, noun: string) => `${n} ${noun}${n === 1 ? "" : "s"}`;

function toHeadline(plan: PanelPlan, selectors: number, moments: number): string {
  switch (plan.status) {
    case "no-analog":
      return "Nothing runs on analog track in this slot, so no selector is turned.";
    case "no-assignment":
      return "There is no schedule: the controllers' outputs do not suffice for this slot.";
    case "not-decided":
      return "There is no schedule: whether the controllers' outputs suffice was not found out.";
    case "plan-stopped":
      return "There is no schedule: the plan wants of the track what no panel can give.";
    case "made": {
      const { made, atLeast } = plan.turns;
      const all = `${count(made, "turn")} on ${count(selectors, "selector")}, at ${count(moments, "moment")}`;
      if (made === atLeast) return `${all}. No working plan needs fewer turns: proven.`;
      return `${all}. No working plan needs fewer than ${atLeast}; whether one needs fewer than ${made} is not known.`;
    }
  }
}
