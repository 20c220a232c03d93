import { toLayoutTimeText } from "../../../shared/layout-time.ts";
import type { Finding } from "../../planner/findings.ts";
import type { Hindrance } from "../../planner/night/stand-in.ts";
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
export function toFindingSentence(finding: Finding, problem: Problem): string {
  const { code, measured, limit } = finding;
  const section = problem.sections[finding.sections[0] ?? -1]?.code ?? "";
  if (code === "path-too-fast")
    return `It is too slow: it may run at ${speed(limit)}, and the timetable asks for ${speed(measured)}.`;
  if (code === "train-longer-than-road")
    return `With it the train is ${measured} mm long, and section ${section} holds ${limit} mm.`;
  if (code === "path-no-changeover")
    return `With it the train is too long to be changed over between analog and digital near section ${section}.`;
  const draws = `With it ${drawerOf(finding, problem)} draws ${amps(measured ?? 0)}`;
  return finding.severity === "warns"
    ? `${draws}, more than the ${amps(limit ?? 0)} that leave the reserve free.`
    : `${draws} of ${amps(limit ?? 0)}.`;
}

const speed = (kmh: number | null) => `${Math.round(kmh ?? 0)} km/h`;

function drawerOf({ districts, supplies, outputs, controllers }: Finding, problem: Problem): string {
  const [district, supply, output, controller] = [districts[0], supplies[0], outputs[0], controllers[0]];
  if (district !== undefined) return `district ${problem.districts[district]?.code}`;
  if (supply !== undefined) return `supply ${problem.supplies[supply]?.code}`;
  if (output !== undefined) return `output ${problem.outputs[output]?.code}`;
  return `controller ${problem.controllers[controller ?? -1]?.code}`;
}
