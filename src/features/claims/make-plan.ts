import type { DutyKind } from "../../../shared/booking.ts";
import type { TrainControl } from "../../../shared/claims.ts";
import { departsIn } from "../../planner/night/in-slot.ts";
import { createWalkTime, WALKING } from "../../planner/people/walking.ts";
import type { Job, NightPlan, TrainParts } from "./plan.ts";
import type { PlanRows, SectionRow, SlotRow, TrainRow } from "./plan-store.ts";

/** How long before and after a run its handset is needed. */
export interface HandsetTimes {
  readonly pickUpMs: number;
  readonly handInMs: number;
}

/** Turns rows into what claims are looked at with: layout times into real ones, sections into what drives there. */
export function makePlan(rows: PlanRows, times: HandsetTimes): NightPlan {
  const { night, slots } = rows;
  const sections = new Map(rows.sections.map((section) => [section.code, section]));
  const jobs = slots.flatMap((slot) =>
    [
      ...trainsOf(slot, rows).map((train) => toTrainJob(train, slot, sections, rows, times)),
      ...dutiesOf(slot, rows),
    ].sort((a, b) => a.startMs - b.startMs || (a.code < b.code ? -1 : 1)),
  );
  return {
    night,
    slots,
    jobs,
    members: new Map(rows.members.map((member) => [member.code, member])),
    handsets: new Map(rows.handsets.map((handset) => [handset.code, handset])),
    locomotives: new Map(
      rows.locomotives.map(({ code, name, kind, address }) => [
        code,
        { code, name, address: kind === null || address === null ? null : { kind, number: address } },
      ]),
    ),
    placeNames: new Map(rows.places.map(({ code, name }) => [code, name])),
    roadNames: new Map(rows.sections.map(({ code, name }) => [code, name])),
    walk: createWalkTime(
      rows.places,
      rows.walks.map(({ fromCode: from, toCode: to, seconds }) => ({ from, to, seconds })),
      { ...WALKING, ...rows.walking },
    ),
  };
}

function trainsOf(slot: SlotRow, { trains, night }: PlanRows): TrainRow[] {
  const clocks = {
    lengthMs: slot.endsAt.getTime() - slot.startsAt.getTime(),
    layoutStartS: slot.layoutStartS,
    ratio: night.clockRatio,
  };
  return trains.filter(
    ({ versionId, path }) =>
      versionId === slot.versionId && path.length > 1 && departsIn(clocks, path[0]?.depart ?? -1),
  );
}

function toTrainJob(
  train: TrainRow,
  slot: SlotRow,
  sections: ReadonlyMap<string, SectionRow>,
  { night, controls }: PlanRows,
  { pickUpMs, handInMs }: HandsetTimes,
): Job {
  const [first, last] = [train.path[0], train.path.at(-1)];
  const startLayoutS = first?.depart ?? 0;
  const endLayoutS = last?.arrive ?? startLayoutS;
  // instants are rounded to the ms once, halves up: design section 4
  const toMs = (layoutS: number) =>
    slot.startsAt.getTime() + Math.floor(((layoutS - slot.layoutStartS) * 1_000) / night.clockRatio + 0.5);
  const [startMs, endMs] = [toMs(startLayoutS), toMs(endLayoutS)];
  const placeOf = (section: string | undefined) => sections.get(section ?? "")?.place ?? null;
  return {
    kind: "train",
    id: train.id,
    slot: slot.code,
    code: train.code,
    name: train.name,
    requires: train.requires,
    startMs,
    endMs,
    fromMs: startMs - pickUpMs,
    untilMs: endMs + handInMs,
    startLayoutS,
    endLayoutS,
    startPlace: placeOf(first?.section),
    endPlace: placeOf(last?.section),
    startRoad: first?.section ?? null,
    endRoad: last?.section ?? null,
    train: toParts(train, sections, controls),
    duty: null,
  };
}

/**
 * A section is driven by handset where it is run digital. A changeover section is passed as what lies before or behind it,
 * so it says nothing by itself.
 */
function toParts(
  { priority, locomotives, path }: TrainRow,
  sections: ReadonlyMap<string, SectionRow>,
  controls: PlanRows["controls"],
): TrainParts {
  const run = path.flatMap(({ section }) => sections.get(section) ?? []);
  const controlOf = ({ wiring, area }: SectionRow) => (wiring === "both" ? controls.get(area) : wiring);
  const plain = run.filter(({ changeover }) => !changeover);
  const digital = plain.filter((section) => controlOf(section) === "digital");
  const byHandset = digital.length > 0;
  const byController = plain.some((section) => controlOf(section) === "analog") || !byHandset;
  const control: TrainControl = byHandset ? (byController ? "both" : "handset") : "controller";
  return {
    priority,
    calls: path.slice(1, -1).filter(({ arrive, depart }) => arrive !== null && arrive !== depart).length,
    locomotives,
    control,
    system: digital.find(({ system }) => system !== null)?.system ?? null,
    places: [...new Set(digital.flatMap(({ place }) => place ?? []))],
  };
}

function dutiesOf(slot: SlotRow, { duties, night }: PlanRows): Job[] {
  const toLayoutS = (ms: number) =>
    slot.layoutStartS + ((ms - slot.startsAt.getTime()) / 1_000) * night.clockRatio;
  return duties
    .filter(({ slotCode }) => slotCode === slot.code)
    .map((duty): Job => {
      const startMs = (duty.startsAt ?? slot.startsAt).getTime();
      const endMs = (duty.endsAt ?? slot.endsAt).getTime();
      return {
        kind: "duty",
        id: duty.id,
        slot: slot.code,
        code: duty.code,
        name: duty.name,
        requires: duty.requires,
        startMs,
        endMs,
        fromMs: startMs,
        untilMs: endMs,
        startLayoutS: toLayoutS(startMs),
        endLayoutS: toLayoutS(endMs),
        startPlace: duty.placeCode,
        endPlace: duty.placeCode,
        startRoad: null,
        endRoad: null,
        train: null,
        duty: { kind: duty.kind as DutyKind, note: duty.note },
      };
    });
}
