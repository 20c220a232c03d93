import { parseLayoutTime } from "../../../shared/layout-time.ts";
import type { PathEntry as PathEntryRecord, Train as TrainRecord } from "../../../shared/timetable.ts";
import type { PathEntry, Train } from "../../planner/problem.ts";
import { toRealMs } from "./clock.ts";
import type { LayoutIndexes } from "./map-layout.ts";
import type { PlanSource } from "./plan-source.ts";
import { type CodeIndex, indexCodes, type PlanFault, resolve } from "./references.ts";

export interface RosterIndexes {
  readonly locomotives: CodeIndex;
  readonly rakes: CodeIndex;
}

/** The trains that depart within the slot, in the planner's form, and the codes of those that do not. */
export interface PlannerTrains {
  readonly planned: readonly Train[];
  readonly inSlot: readonly TrainRecord[];
  readonly notInSlot: readonly string[];
}

/** Turns the timetable's trains into the planner's. A train belongs to the slot in which it departs. */
export function toPlannerTrains(
  source: PlanSource,
  layout: LayoutIndexes,
  roster: RosterIndexes,
  faults: PlanFault[],
): PlannerTrains {
  indexCodes("train", "/trains", source.trains, faults);
  const planned: Train[] = [];
  const inSlot: TrainRecord[] = [];
  const notInSlot: string[] = [];
  const { startMs, endMs } = source.frame;
  source.trains.forEach((record, i) => {
    const train = toTrain(record, `/trains/${i}`, { source, layout, roster, faults });
    const departs = train.path[0]?.departMs ?? startMs;
    if (departs < startMs || departs >= endMs) {
      notInSlot.push(record.code);
      return;
    }
    planned.push(train);
    inSlot.push(record);
  });
  return { planned, inSlot, notInSlot };
}

interface TrainContext {
  readonly source: PlanSource;
  readonly layout: LayoutIndexes;
  readonly roster: RosterIndexes;
  readonly faults: PlanFault[];
}

/** The planner counts ms in 32 bits; a train of another week belongs to another session. */
export const FARTHEST_MS = 12 * 24 * 3_600_000;

function toTrain(record: TrainRecord, at: string, context: TrainContext): Train {
  const { roster, faults } = context;
  const power = record.motivePower.map(({ locomotive, position }, i) => ({
    locomotive: resolve(roster.locomotives, locomotive, `${at}/motivePower/${i}/locomotive`, faults),
    atRear: position === "rear",
  }));
  const rakes = record.rakes.map((rake, i) => resolve(roster.rakes, rake, `${at}/rakes/${i}`, faults));
  const ms = (time: string | null, field: string) => toMs(time, `${at}/${field}`, context);
  return {
    code: record.code,
    lengthMm: trainLength(record, at, context, power, rakes),
    power,
    rakes,
    path: toPath(record.path, at, context),
    placedMs: ms(record.placedAt, "placedAt"),
    removedMs: ms(record.removedAt, "removedAt"),
    requires: record.requires,
  };
}

function toMs(time: string | null, pointer: string, { source, faults }: TrainContext): number | null {
  if (time === null) return null;
  const ms = toRealMs(source.frame, parseLayoutTime(time));
  if (Math.abs(ms) <= FARTHEST_MS) return ms;
  faults.push({
    pointer,
    detail: `${time} is more than 12 days of real time away: correct it, or the clock ratio.`,
  });
  return 0;
}

function trainLength(
  record: TrainRecord,
  at: string,
  { source, faults }: TrainContext,
  power: readonly { readonly locomotive: number }[],
  rakes: readonly number[],
): number {
  if (record.lengthMm !== null) return record.lengthMm;
  const { roster } = source;
  const engines = power.reduce(
    (sum, { locomotive }) => sum + (roster.locomotives[locomotive]?.lengthMm ?? 0),
    0,
  );
  const length = rakes.reduce((sum, rake) => sum + (roster.rakes[rake]?.lengthMm ?? 0), engines);
  if (record.motivePower.length + record.rakes.length === 0)
    faults.push({
      pointer: `${at}/lengthMm`,
      detail: `Train ${record.code} has neither stock nor a length: give it one of them.`,
    });
  return length;
}

/** Ends have their one time; between them a call has both or neither. */
function toPath(entries: readonly PathEntryRecord[], at: string, context: TrainContext): PathEntry[] {
  const { layout, faults } = context;
  const last = entries.length - 1;
  return entries.map((entry, i) => {
    const pointer = `${at}/path/${i}`;
    const missing = missingTime(entry, i === 0, i === last);
    if (missing !== null) faults.push({ pointer: `${pointer}/${missing.field}`, detail: missing.detail });
    const ms = (time: string | null, field: string) => toMs(time, `${pointer}/${field}`, context);
    return {
      section: layout.resolve("sections", entry.section, `${pointer}/section`),
      arriveMs: i === 0 ? null : ms(entry.arrive, "arrive"),
      departMs: i === last ? null : ms(entry.depart, "depart"),
    };
  });
}

function missingTime(
  entry: PathEntryRecord,
  first: boolean,
  last: boolean,
): { readonly field: "arrive" | "depart"; readonly detail: string } | null {
  if (first && entry.depart === null)
    return { field: "depart", detail: "A path starts with a departure: give its time." };
  if (last && entry.arrive === null)
    return { field: "arrive", detail: "A path ends with an arrival: give its time." };
  if (first || last || (entry.arrive === null) === (entry.depart === null)) return null;
  const field = entry.arrive === null ? "arrive" : "depart";
  return {
    field,
    detail: "A call on the way has an arrival and a departure (the same for a pass): give both, or neither.",
  };
}
