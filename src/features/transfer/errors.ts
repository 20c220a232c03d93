import type { Fault } from "../../../shared/errors.ts";
import { Refusal } from "../../lib/refusal.ts";

/** Most places named in one refusal. */
export const MOST_FAULTS = 100;

/** Nothing was imported, and this is why: `count` places are wrong, of which `faults` are told. */
export function notImported(count: number, faults: readonly Fault[]): Refusal {
  const [first] = faults;
  const places = count === 1 ? "one place is" : `${count} places are`;
  const rest = count > faults.length ? ` The first ${faults.length} are listed.` : "";
  return new Refusal(
    "unprocessable",
    `Nothing was imported: ${places} wrong, first ${placeOf(first)}: ${first?.detail}${rest}`,
    faults,
  );
}

function placeOf(fault: Fault | undefined): string {
  if (fault?.row === undefined) return fault?.pointer ?? "";
  return fault.column === undefined ? `row ${fault.row}` : `row ${fault.row}, column ${fault.column}`;
}

export const issued = (timetable: string, number: number) =>
  new Refusal("version-issued", `Version ${number} of timetable ${timetable} is issued.`);

export const noVersion = (timetable: string, number: number) =>
  new Refusal("not-found", `There is no version ${number} of a timetable ${timetable} here.`);

export const comesTwice = (noun: string, code: string) =>
  `The ${noun} ${code} comes a second time: leave one of them out, or give it another code.`;

export const versionTwice = (number: number) =>
  `Version ${number} comes a second time: leave one of them out, or give it another number.`;

export const partInUse = (noun: string, codes: readonly string[], users: readonly string[]) =>
  `The ${noun} ${codes.join(", ")} would go, but is used by ${users.join(", ")}: keep it, or import those as well.`;

export const reopensIssued = (timetable: string, number: number) =>
  `Version ${number} of timetable ${timetable} is issued here and cannot be a draft again: send it as issued, or under a new number.`;

export const changesIssued = (timetable: string, number: number, train: string) =>
  `Version ${number} of timetable ${timetable} is issued here, and its train ${train} would change: send it under a new number.`;
