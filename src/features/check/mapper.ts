import type { PlanDocument } from "../../../shared/documents.ts";
import type { Handset } from "../../../shared/handsets.ts";
import { parseLayoutTime } from "../../../shared/layout-time.ts";
import type { Policy } from "../../../shared/policy.ts";
import type { Train } from "../../../shared/timetable.ts";
import type { PlannerPolicy, Problem } from "../../planner/problem.ts";
import { toRealMs } from "./clock.ts";
import { systemsElsewhere } from "./elsewhere.ts";
import { toCrew } from "./map-crew.ts";
import { type LayoutIndexes, toLayoutParts } from "./map-layout.ts";
import { toRosterParts } from "./map-roster.ts";
import { FARTHEST_MS, toPlannerTrains } from "./map-trains.ts";
import type { PlanSource } from "./plan-source.ts";
import { indexCodes, type PlanFault } from "./references.ts";

/** The plan as the planner takes it, with the trains of the slot in the planner's order. */
export interface PreparedPlan {
  readonly source: PlanSource;
  readonly problem: Problem;
  readonly trains: readonly Train[];
  readonly trainsNotInSlot: readonly string[];
}

export type Preparation =
  | { readonly ok: true; readonly plan: PreparedPlan }
  | { readonly ok: false; readonly faults: readonly PlanFault[] };

/** Turns a posted plan into what a check is made from; its slot starts the session. */
export function toPlanSource(document: PlanDocument): PlanSource {
  const { slot } = document;
  const layoutStartSeconds = parseLayoutTime(slot.layoutStart);
  const frame = { startMs: 0, endMs: 0, layoutStartSeconds, clockRatio: slot.clockRatio, sessionStart: null };
  return {
    scale: document.scale,
    policy: document.policy,
    layout: document.layout,
    roster: document.roster,
    handsets: document.handsets,
    readings: document.readings,
    trains: document.trains,
    areas: slot.areas,
    frame: { ...frame, endMs: toRealMs(frame, parseLayoutTime(slot.layoutEnd)) },
    otherSlots: [],
    crew: {
      members: document.members,
      turns: document.crew,
      isSupervised: document.crew.some(({ member }) =>
        document.members.some(({ code, junior }) => code === member && !junior),
      ),
    },
  };
}

/** Resolves every reference and unit. Lists everything that is wrong, not just the first. */
export function toProblem(source: PlanSource): Preparation {
  const faults: PlanFault[] = [];
  if (source.frame.endMs <= source.frame.startMs)
    faults.push({ pointer: "/slot/layoutEnd", detail: "The slot ends before it starts: give a later end." });
  if (source.frame.endMs > FARTHEST_MS)
    faults.push({
      pointer: "/slot/layoutEnd",
      detail: "The slot lasts more than 12 days of real time: shorten it.",
    });
  const layout = toLayoutParts(source, faults);
  const roster = toRosterParts(
    source.roster,
    source.readings,
    systemsElsewhere(source, layout.parts),
    faults,
  );
  const handsets = toHandsets(source.handsets, layout.indexes, faults);
  const trains = toPlannerTrains(source, layout.indexes, roster.indexes, faults);
  const crew = toCrew(source, trains.planned, handsets, faults);
  if (faults.length > 0) return { ok: false, faults };
  const problem: Problem = {
    scale: source.scale,
    policy: toPlannerPolicy(source.policy),
    slot: { startMs: source.frame.startMs, endMs: source.frame.endMs },
    ...layout.parts,
    locomotives: roster.locomotives,
    rakes: roster.rakes,
    trains: trains.planned,
    handsets,
    crew,
  };
  return {
    ok: true,
    plan: { source, problem, trains: trains.inSlot, trainsNotInSlot: trains.notInSlot },
  };
}

function toPlannerPolicy(policy: Policy): PlannerPolicy {
  const ms = (seconds: number) => Math.round(seconds * 1_000);
  return {
    setUpMs: ms(policy.setUpSeconds),
    releaseMs: ms(policy.releaseSeconds),
    releaseDwellMs: ms(policy.releaseDwellSeconds),
    pickUpMs: ms(policy.pickUpSeconds),
    handInMs: ms(policy.handInSeconds),
    reserve: policy.reserve,
    inrushMs: ms(policy.inrushSeconds),
    faultMargin: policy.faultMargin,
    dropShare: policy.dropShare,
    busyShare: policy.busyShare,
    walkingDetour: policy.walkingDetour,
    walkingMmPerSecond: policy.walkingMmPerSecond,
  };
}

function toHandsets(handsets: readonly Handset[], indexes: LayoutIndexes, faults: PlanFault[]) {
  indexCodes("handset", "/handsets", handsets, faults);
  return handsets.map((handset, i) => ({
    code: handset.code,
    commandSystem: indexes.resolve("commandSystems", handset.commandSystem, `/handsets/${i}/commandSystem`),
    kind: handset.kind,
    places: handset.places.map((place, j) => indexes.resolve("places", place, `/handsets/${i}/places/${j}`)),
    batteryMs: handset.batteryMinutes === null ? null : handset.batteryMinutes * 60_000,
    ready: handset.state === "ready",
  }));
}
