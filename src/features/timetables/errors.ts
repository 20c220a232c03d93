import { Refusal } from "../../lib/refusal.ts";

export const versionIssued = (timetable: string, number: number) =>
  new Refusal("version-issued", `Version ${number} of timetable ${timetable} is issued.`);

export const noTimetable = (timetable: string) =>
  new Refusal("not-found", `There is no timetable ${timetable} here.`);

export const noVersion = (timetable: string, number: number | string) =>
  new Refusal("not-found", `Timetable ${timetable} has no version ${number}.`);

export const noVersionToCopy = (timetable: string, number: number) => {
  const detail = `Timetable ${timetable} has no version ${number} to copy: name one it has, or null to start empty.`;
  return new Refusal("unprocessable", detail, [{ pointer: "/body/from", detail }]);
};

export const numberTaken = (timetable: string, number: number) => {
  const detail = `Timetable ${timetable} has a version ${number} already: choose another number.`;
  return new Refusal("duplicate-code", detail, [{ pointer: "/body/number", detail }]);
};

export const noNumberLeft = (timetable: string, last: number) =>
  new Refusal(
    "conflict",
    `Version ${last} of timetable ${timetable} is the last there can be: start another timetable.`,
  );

export const stockTwice = (code: string) => `${code} is in this train already: name it once.`;
export const NO_LENGTH = "A train with neither stock nor a length cannot be checked: give it one of them.";
export const STARTS_WITH_DEPARTURE = "A path starts with a departure: give its time.";
export const ENDS_WITH_ARRIVAL = "A path ends with an arrival: give its time.";
export const BOTH_OR_NEITHER =
  "A call on the way has an arrival and a departure (the same for a pass): give both, or neither.";
export const TOO_LATE = "The layout clock ends at 99:59:59: write an earlier time.";

export const timeBackwards = (time: string, before: string) =>
  `The train would be here at ${time}, but it was at ${before} before: write a later time here, or an earlier one there.`;

export const notLinked = (from: string, to: string, reachable: readonly string[]) => {
  const others =
    reachable.length === 0
      ? `nothing is linked to ${from}`
      : `from ${from} it can go to ${reachable.join(", ")}`;
  return `No link leads from ${from} to ${to}: make one, or another path (${others}).`;
};
