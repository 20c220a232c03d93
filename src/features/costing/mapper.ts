import type { BothWays } from "../../../shared/costing.ts";
import type { AnalogCost } from "../../planner/costing/all-analog.ts";
import type { DigitalCost, Sizes } from "../../planner/costing/all-digital.ts";
import type { MostTrains, Stretch } from "../../planner/costing/most-trains.ts";
import type { Problem } from "../../planner/problem.ts";

const HOUR_MS = 3_600_000;

const count = (n: number, noun: string, plural = `${noun}s`) => `${n} ${n === 1 ? noun : plural}`;
const codesOf = (list: readonly { readonly code: string }[], indexes: readonly number[]) =>
  indexes.map((at) => list[at]?.code ?? "?");

export function toAnalogCost(problem: Problem, cost: AnalogCost): BothWays["analog"] {
  const newSections = cost.divide.reduce((sum, { parts }) => sum + parts - 1, 0);
  const hours = (problem.slot.endMs - problem.slot.startMs) / HOUR_MS;
  const turns = cost.turns && { ...cost.turns, anHour: Math.round((cost.turns.made / hours) * 10) / 10 };
  const parts = [
    count(cost.outputs, "controller output"),
    count(newSections, "more section"),
    ...(turns ? [`${Math.round(turns.anHour)} selector turns an hour`] : []),
    ...(cost.unfit.length > 0 ? [`${count(cost.unfit.length, "locomotive")} that may run analog`] : []),
  ];
  return {
    sentence: `All-analog it needs ${listed(parts)}.`,
    outputs: cost.outputs,
    reach: cost.reach.map((sections) => codesOf(problem.sections, sections)),
    isAssigned: cost.isAssigned,
    turns,
    divide: cost.divide.map(({ section, parts }) => ({
      section: problem.sections[section]?.code ?? "?",
      parts,
    })),
    newSections,
    peakOutputMa: cost.peakOutputMa,
    peakTogetherMa: cost.peakTogetherMa,
    accessoriesMa: cost.accessoriesMa,
    unfit: codesOf(problem.locomotives, cost.unfit),
  };
}

export function toDigitalCost(problem: Problem, cost: DigitalCost, sizes: Sizes): BothWays["digital"] {
  const parts = [
    count(cost.handsetsWithSpares, "handset"),
    `${count(cost.decoders.length, "decoder")} more`,
    count(cost.districts.length, "district"),
    count(cost.supplies.length, "booster"),
  ];
  return {
    sentence: `All-digital this timetable needs ${listed(parts)}.`,
    handsets: cost.handsets,
    handsetsWithSpares: cost.handsetsWithSpares,
    decoders: codesOf(problem.locomotives, cost.decoders),
    peakMa: cost.peakMa,
    accessoriesMa: cost.accessoriesMa,
    ...sizes,
    districts: cost.districts.map(({ sections, peakMa }) => ({
      sections: codesOf(problem.sections, sections),
      peakMa,
    })),
    leastDistricts: cost.leastDistricts,
    supplies: cost.supplies.map(({ districts, accessoryMa, peakMa }) => ({
      districts: [...districts],
      accessoryMa,
      peakMa,
    })),
    leastSupplies: cost.leastSupplies,
    tooMuch: codesOf(problem.sections, cost.tooMuch),
  };
}

export function toMostTrains(problem: Problem, { now, most, stretches }: MostTrains): BothWays["mostTrains"] {
  const named = stretches.map(({ kind, at, used, has, trains }) => ({
    kind,
    name: nameOf(problem, kind, at),
    used,
    has,
    trains,
  }));
  const [first] = named;
  return {
    sentence: howFar(now, most, first?.name),
    now,
    most,
    stretches: named,
  };
}

function howFar(now: number, most: number | null, first: string | undefined): string {
  if (now === 0) return "No train runs, and so nothing tells how many could run at once.";
  if (most === null || first === undefined)
    return "Nothing that the club has limits how many trains run at once.";
  const could = most === 0 ? "none" : most < now ? `only ${most}` : `${most}`;
  return `${count(now, "train")} ${now === 1 ? "runs" : "run"} at once now; with what there is it could be ${could}, and ${first} would give first.`;
}

function nameOf(problem: Problem, kind: Stretch["kind"], at: number): string {
  const { commandSystems, controllers, outputs, districts, supplies } = problem;
  switch (kind) {
    case "handsets":
      return `handsets of ${commandSystems[at]?.code ?? "?"}`;
    case "handset-limit":
      return `the handsets that ${commandSystems[at]?.code ?? "?"} takes at once`;
    case "addresses":
      return `the decoder addresses that ${commandSystems[at]?.code ?? "?"} takes at once`;
    case "outputs":
      return "the controller outputs";
    case "output":
      return `output ${outputs[at]?.code ?? "?"}`;
    case "transformer":
      return `the transformer of controller ${controllers[at]?.code ?? "?"}`;
    case "district":
      return `district ${districts[at]?.code ?? "?"}`;
    case "supply":
      return `supply ${supplies[at]?.code ?? "?"}`;
  }
}

function listed(items: readonly string[]): string {
  if (items.length <= 1) return items[0] ?? "";
  return `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`;
}
