import { toLayoutTimeText } from "../../../shared/layout-time.ts";
import type { Finding } from "../../planner/findings.ts";
import type { Hindrance } from "../../planner/night/stand-in.ts";
import type { StandInCode, StandInFinding } from "../../planner/night/try-stand-ins.ts";
import type { Problem } from "../../planner/problem.ts";

/** `a`, `a and b`, `a, b and c`. */
export const listed = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`;

/** mA as people read amps: `2.90 A`, below an ampere `450 mA`. */
export const amps = (ma: number): string =>
  ma < 1_000 ? `${Math.round(ma)} mA` : `${(ma / 1_000).toFixed(2)} A`;

/** Why a locomotive can't stand in. */
export function toHindranceSentence(hindrance: Hindrance): string {
  switch (hindrance.code) {
    case "failed-too":
      return "It failed tonight as well.";
    case "in-this-train":
      return "It is in this train already.";
    case "busy":
      return `Train ${hindrance.train} has it from ${minute(hindrance.fromS)} to ${minute(hindrance.toS)}.`;
    case "no-decoder":
      return `It has no decoder, and section ${hindrance.section} is digital.`;
    case "digital-only":
      return `Its decoder does not permit analog track, and section ${hindrance.section} is analog.`;
    case "address-taken":
      return `${hindrance.locomotive} in train ${hindrance.train} answers to the same address.`;
  }
}

const minute = (seconds: number) => toLayoutTimeText(Math.floor(seconds / 60) * 60);

/** What the check finds with a locomotive in the train that it did not find before. */
export const toFindingSentence = (finding: StandInFinding, problem: Problem): string =>
  SENTENCES[finding.code](finding, problem);

type Sentence = (finding: StandInFinding, problem: Problem) => string;

const draws: Sentence = (finding, problem) =>
  `With it ${drawerOf(finding, problem)} draws ${amps(finding.measured ?? 0)} of ${amps(finding.limit ?? 0)}.`;

const drawsClose: Sentence = (finding, problem) =>
  `With it ${drawerOf(finding, problem)} draws ${amps(finding.measured ?? 0)}, more than the ${amps(finding.limit ?? 0)} that leave the reserve free.`;

const drawsInStall: Sentence = (finding, problem) =>
  `With it ${drawerOf(finding, problem)} draws ${amps(finding.measured ?? 0)} of ${amps(finding.limit ?? 0)} if ${codesOf(problem.locomotives, finding.locomotives)[0]} stalls.`;

const leavesNoOutput: Sentence = (finding, problem) =>
  `With it no controller output is left for the train in ${sectionsOf(finding, problem)}.`;

const SENTENCES = {
  "path-too-fast": ({ measured, limit }) =>
    `It is too slow: it may run at ${speed(limit)}, and the timetable asks for ${speed(measured)}.`,
  "train-longer-than-road": (finding, problem) =>
    `With it the train is ${finding.measured} mm long, and ${sectionsOf(finding, problem)} holds ${finding.limit} mm.`,
  "train-bridges-feeds": (finding, problem) =>
    `With it the train is ${finding.measured} mm long and would join analog and digital track: it is changed over in ${sectionsOf(finding, problem)}, which holds ${finding.limit} mm.`,
  "return-loop-too-short": (finding, problem) =>
    `With it the train is ${finding.measured} mm long, and the return loop in ${sectionsOf(finding, problem)} holds ${finding.limit} mm.`,
  "output-none-reaches": leavesNoOutput,
  "outputs-too-few": leavesNoOutput,
  "outputs-not-decided": (finding, problem) =>
    `With it nobody can say whether the controller outputs do for ${sectionsOf(finding, problem)}.`,
  "address-refused": ({ measured, limit, commandSystems }, problem) =>
    `It answers to address ${measured}, and ${systemOf(problem, commandSystems)} takes none above ${limit}.`,
  "addresses-too-many": ({ measured, limit, commandSystems }, problem) =>
    `With it ${systemOf(problem, commandSystems)} has ${measured} addresses in use at once, and drives ${limit}.`,
  "output-over-rating": draws,
  "output-too-close": drawsClose,
  "controller-over-rating": draws,
  "controller-too-close": drawsClose,
  "district-will-trip": draws,
  "district-too-close": drawsClose,
  "supply-over-rating": draws,
  "supply-too-close": drawsClose,
  "output-trips-on-stall": drawsInStall,
  "district-trips-on-stall": drawsInStall,
  "district-trips-on-restart": (finding, problem) =>
    `With it ${drawerOf(finding, problem)} would not come up again after a trip: it draws ${amps(finding.measured ?? 0)} of ${amps(finding.limit ?? 0)} when power returns.`,
  "district-drop-too-big": (finding, problem) =>
    `With it the wires of ${drawerOf(finding, problem)} lose ${volts(finding.measured)}, more than ${volts(finding.limit)}.`,
  "district-volts-too-low": (finding, problem) =>
    `With it the far end of ${drawerOf(finding, problem)} has ${volts(finding.measured)}, less than ${volts(finding.limit)}.`,
} satisfies Record<StandInCode, Sentence>;

const codesOf = (records: readonly { readonly code: string }[], indexes: readonly number[]): string[] =>
  indexes.map((index) => records[index]?.code ?? "?");

function sectionsOf({ sections }: Finding, problem: Problem): string {
  return `section${sections.length > 1 ? "s" : ""} ${listed(codesOf(problem.sections, sections))}`;
}

const systemOf = ({ commandSystems }: Problem, indexes: readonly number[]) =>
  `command system ${codesOf(commandSystems, indexes)[0]}`;

const volts = (value: number | null) => `${(value ?? 0).toFixed(2)} V`;

const speed = (kmh: number | null) => `${Math.round(kmh ?? 0)} km/h`;

function drawerOf({ districts, supplies, outputs, controllers }: Finding, problem: Problem): string {
  const [district, supply, output, controller] = [districts[0], supplies[0], outputs[0], controllers[0]];
  if (district !== undefined) return `district ${problem.districts[district]?.code}`;
  if (supply !== undefined) return `supply ${problem.supplies[supply]?.code}`;
  if (output !== undefined) return `output ${problem.outputs[output]?.code}`;
  return `controller ${problem.controllers[controller ?? -1]?.code}`;
}
