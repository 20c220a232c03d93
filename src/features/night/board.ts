import { toLayoutTimeText } from "../../../shared/layout-time.ts";
import type { Night } from "../../../shared/night.ts";
import { listDue } from "../../planner/night/lateness.ts";
import { findClockSlot, layoutSecondsAt, toClock } from "./clock-board.ts";
import { toAttendances, toHandsets } from "./desk-board.ts";
import type { NightFacts } from "./facts.ts";
import { toIncidents } from "./incident-board.ts";
import { toTrains, toWorking } from "./train-board.ts";

/** All that the live board shows of a night. */
export function toNight(facts: NightFacts): Night {
  const { session, slots, booking } = facts;
  return {
    session: session.code,
    name: session.name,
    timeZone: session.club.timeZone,
    booking,
    clock: toClock(facts),
    slots: slots.map((slot) => ({
      code: slot.code,
      name: slot.name,
      startsAt: slot.startsAt.toISOString(),
      endsAt: slot.endsAt.toISOString(),
      layoutStart: toLayoutTimeText(slot.layoutStartS),
    })),
    next: toNext(facts),
    trains: toTrains(facts),
    handsets: toHandsets(facts),
    attendance: toAttendances(facts),
    incidents: toIncidents(facts),
  };
}

function toNext(facts: NightFacts): Night["next"] {
  const slot = findClockSlot(facts);
  const workings = facts.trains
    .filter((train) => train.slot === slot)
    .map((train) => toWorking(facts, train));
  return listDue(workings, layoutSecondsAt(facts, slot, facts.now)).map(({ code }) => ({
    slot,
    train: code,
  }));
}
