import { toLayoutTimeText } from "../../../shared/layout-time.ts";
import type { Incident } from "../../../shared/night.ts";
import type * as rows from "../../database/generated/client.ts";
import { layoutSecondsAt } from "./clock-board.ts";
import type { NightFacts } from "./facts.ts";
import { amps } from "./wording.ts";

const NOTHING = {
  district: null,
  measuredMa: null,
  slot: null,
  train: null,
  locomotive: null,
  replacement: null,
} as const;

/** All that went wrong, latest first. */
export function toIncidents(facts: NightFacts): Incident[] {
  const { trips, replacements, clock } = facts.log;
  return [
    ...trips.map((trip) => toTrip(facts, trip)),
    ...replacements.map((row) => toFailure(facts, row)),
    ...clock.filter(({ run }) => run === "set").map((change) => toCorrection(change)),
  ].sort((a, b) => (a.at === b.at ? (a.id < b.id ? 1 : -1) : a.at < b.at ? 1 : -1));
}

export const toTrip = (
  facts: NightFacts,
  { id, at, note, districtCode, measuredMa }: rows.NightTrip,
): Incident => ({
  ...NOTHING,
  kind: "trip",
  id,
  at: at.toISOString(),
  layout: layoutShown(facts, at),
  sentence: `The breaker of district ${districtCode} opened${measuredMa === null ? "" : ` at ${amps(measuredMa)}`}.`,
  note,
  district: districtCode,
  measuredMa,
});

const toFailure = (facts: NightFacts, row: rows.NightReplacement): Incident => ({
  ...NOTHING,
  kind: "failure",
  id: row.id,
  at: row.at.toISOString(),
  layout: toLayoutTimeText(Math.floor(layoutSecondsAt(facts, row.slotCode, row.at))),
  sentence: `${row.locomotiveCode} failed in train ${row.trainCode}; ${
    row.replacementCode === null ? "nothing has taken its place yet" : `${row.replacementCode} took its place`
  }.`,
  note: row.note,
  slot: row.slotCode,
  train: row.trainCode,
  locomotive: row.locomotiveCode,
  replacement: row.replacementCode,
});

function toCorrection({ position, at, layoutS, slotCode, note }: rows.NightClockChange): Incident {
  const layout = toLayoutTimeText(layoutS ?? 0);
  return {
    ...NOTHING,
    kind: "clock",
    id: `clock-${position}`,
    at: at.toISOString(),
    layout,
    sentence: `The clock was set to ${layout}.`,
    note,
    slot: slotCode,
  };
}

/** By the clock that was touched last before; null before any was. */
function layoutShown(facts: NightFacts, at: Date): string | null {
  const slot = facts.log.clock.findLast((change) => change.at <= at)?.slotCode;
  return slot === undefined ? null : toLayoutTimeText(Math.floor(layoutSecondsAt(facts, slot, at)));
}
