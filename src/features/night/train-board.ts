import { toLayoutTimeText } from "../../../shared/layout-time.ts";
import type { NightLocomotive, NightTrain, TrainState } from "../../../shared/night.ts";
import type * as rows from "../../database/generated/client.ts";
import { findLateness, type NightWorking } from "../../planner/night/lateness.ts";
import { type Place, placesTonight } from "../../planner/night/tonight.ts";
import { layoutSecondsAt } from "./clock-board.ts";
import { type NightFacts, toPerson } from "./facts.ts";
import type { TimetableTrain } from "./store.ts";

const MINUTE = 60;
const wholeMinutes = (seconds: number) => Math.floor(seconds / MINUTE);
const toMinuteText = (seconds: number) => toLayoutTimeText(wholeMinutes(seconds) * MINUTE);

/** What was recorded of a train; undefined where nothing was. */
export const findReport = (
  { log }: NightFacts,
  { slot, code }: TimetableTrain,
): rows.NightTrain | undefined =>
  log.trains.find(({ slotCode, trainCode }) => slotCode === slot && trainCode === code);

/** A train as the planner sees it: what the timetable says of it, and what became of it. */
export function toWorking(facts: NightFacts, train: TimetableTrain): NightWorking {
  const report = findReport(facts, train);
  const layoutAt = (at: Date | null | undefined) => (at ? layoutSecondsAt(facts, train.slot, at) : null);
  const stated = report?.lateMinutes ?? null;
  return {
    code: train.code,
    departS: train.departS,
    arriveS: train.arriveS,
    state: (report?.state ?? "waiting") as TrainState,
    departedS: layoutAt(report?.departedAt),
    arrivedS: layoutAt(report?.arrivedAt),
    statedLateS: stated === null ? null : stated * MINUTE,
  };
}

/** What a train has tonight, from the head. */
export const placesOf = ({ log }: Pick<NightFacts, "log">, train: TimetableTrain): Place[] =>
  placesTonight(
    train.locomotives,
    log.replacements
      .filter(({ slotCode, trainCode }) => slotCode === train.slot && trainCode === train.code)
      .map(({ locomotiveCode: failed, replacementCode: by }) => ({ failed, by })),
  );

export const failedTonight = ({ log }: Pick<NightFacts, "log">): ReadonlySet<string> =>
  new Set(log.replacements.map(({ locomotiveCode }) => locomotiveCode));

export function toTrains(facts: NightFacts): NightTrain[] {
  const failed = failedTonight(facts);
  return facts.trains.map((train) => toTrain(facts, train, failed));
}

function toTrain(facts: NightFacts, train: TimetableTrain, failed: ReadonlySet<string>): NightTrain {
  const report = findReport(facts, train);
  const working = toWorking(facts, train);
  const late = findLateness(working, layoutSecondsAt(facts, train.slot, facts.now));
  const lateS = wholeMinutes(late.lateS) * MINUTE;
  const claim = facts.crew.drivers.find(
    ({ slot, train: code }) => slot === train.slot && code === train.code,
  );
  const { departedS, arrivedS } = working;
  const waits = working.state === "waiting";
  return {
    slot: train.slot,
    train: train.code,
    name: train.name,
    from: {
      ...toRoad(facts, train.fromSection),
      layout: toLayoutTimeText(train.departS),
      expectedLayout:
        departedS === null ? toLayoutTimeText(train.departS + (waits ? lateS : 0)) : toMinuteText(departedS),
    },
    to: {
      ...toRoad(facts, train.toSection),
      layout: toLayoutTimeText(train.arriveS),
      expectedLayout: arrivedS === null ? toLayoutTimeText(train.arriveS + lateS) : toMinuteText(arrivedS),
    },
    locomotives: placesOf(facts, train).map((place) => toLocomotive(facts, place, failed)),
    driver: claim ? toPerson(facts, claim.member) : null,
    handset: claim?.handset ?? null,
    state: working.state,
    lateMinutes: wholeMinutes(late.lateS),
    statedLateMinutes: report?.lateMinutes ?? null,
    departedAt: report?.departedAt?.toISOString() ?? null,
    departedLayout: departedS === null ? null : toMinuteText(departedS),
    arrivedAt: report?.arrivedAt?.toISOString() ?? null,
    arrivedLayout: arrivedS === null ? null : toMinuteText(arrivedS),
    note: report?.note ?? "",
    version: report?.version ?? 1,
  };
}

function toRoad({ roads }: NightFacts, section: string) {
  const road = roads.get(section);
  return {
    place: road?.place?.code ?? null,
    placeName: road?.place?.name ?? null,
    road: section,
    roadName: road?.name ?? section,
  };
}

function toLocomotive(
  { locomotives }: NightFacts,
  { planned, tonight }: Place,
  failed: ReadonlySet<string>,
): NightLocomotive {
  const found = locomotives.get(tonight);
  return {
    code: tonight,
    name: found?.name ?? tonight,
    address: found?.decoder ? { kind: found.decoder.kind, number: found.decoder.address } : null,
    replaces: tonight === planned ? null : planned,
    failed: failed.has(tonight),
  };
}
