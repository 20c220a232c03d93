import { Refusal } from "../../lib/refusal.ts";

const step = (at: number, field: string, detail: string) =>
  new Refusal("unprocessable", detail, [{ pointer: `/body/steps/${at}/${field}`, detail }]);

export const noSuchTrain = (at: number, train: string) =>
  step(at, "train", `The slot has no train ${train}, or a step before this one left it out.`);

export const hasNoSuch = (at: number, field: string, train: string, kind: string, code: string) =>
  step(at, field, `Train ${train} has no ${kind} ${code}: name one that it has.`);

export const noTrainThen = (at: number, field: string, train: string, detail: string) =>
  step(at, field, `Train ${train} cannot be so. ${detail}`);

export const tooFar = (at: number, train: string) =>
  step(
    at,
    "minutes",
    `Train ${train} would run before midnight of its timetable, or past 99:59:59: move it less.`,
  );

export const noLocomotive = (at: number, code: string) =>
  step(at, "to", `The club has no locomotive ${code}: name one of its roster.`);
