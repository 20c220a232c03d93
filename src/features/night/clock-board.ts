import { toLayoutTimeText } from "../../../shared/layout-time.ts";
import type { NightClock } from "../../../shared/night.ts";
import type * as rows from "../../database/generated/client.ts";
import { type ClockChange, type ClockReading, layoutTimeAt } from "../../planner/night/layout-clock.ts";
import type { NightFacts } from "./facts.ts";

type ClockFacts = Pick<NightFacts, "session" | "now" | "slots"> & {
  readonly log: Pick<NightFacts["log"], "clock">;
};

/** What a slot's layout clock shows at an instant. */
export function readSlotClock({ session, slots, log }: ClockFacts, slot: string, at: Date): ClockReading {
  const layoutStartS = slots.find(({ code }) => code === slot)?.layoutStartS ?? 0;
  const changes = log.clock.filter(({ slotCode }) => slotCode === slot).map(toChange);
  const face = { layoutStartMs: layoutStartS * 1_000, ratio: session.clockRatio };
  return layoutTimeAt(changes, face, at.getTime());
}

/** In layout seconds, not rounded. */
export const layoutSecondsAt = (facts: ClockFacts, slot: string, at: Date): number =>
  readSlotClock(facts, slot, at).layoutMs / 1_000;

function toChange({ run, at, layoutS }: rows.NightClockChange): ClockChange {
  const atMs = at.getTime();
  if (layoutS !== null) return { run: "set", atMs, layoutMs: layoutS * 1_000 };
  return { run: run === "start" ? "start" : "pause", atMs };
}

/** The slot whose clock was touched last; before any was, the one that runs by the booking, or the next to. */
export function findClockSlot({ slots, log, now }: ClockFacts): string {
  const touched = log.clock.at(-1)?.slotCode;
  if (touched !== undefined) return touched;
  const next = slots.find(({ endsAt }) => endsAt > now) ?? slots.at(-1);
  if (next === undefined) throw new Error("a session without slots");
  return next.code;
}

/** The ETag of the clock: it moves whenever anybody touches it. */
export const clockVersion = (changes: readonly unknown[]): number => changes.length + 1;

export function toClock(facts: ClockFacts): NightClock {
  const { session, log, now } = facts;
  const slot = findClockSlot(facts);
  const { layoutMs, running } = readSlotClock(facts, slot, now);
  const started = log.clock.some(({ slotCode, run }) => slotCode === slot && run === "start");
  const last = log.clock.findLast(({ slotCode, run }) => slotCode === slot && run !== "set");
  return {
    slot,
    state: running ? "running" : started ? "paused" : "not started",
    at: now.toISOString(),
    layout: toLayoutTimeText(Math.floor(layoutMs / 1_000)),
    layoutSeconds: layoutMs / 1_000,
    clockRatio: session.clockRatio,
    since: last?.at.toISOString() ?? null,
    version: clockVersion(log.clock),
    changes: log.clock.map((change) => ({
      slot: change.slotCode,
      run: change.run as NightClock["changes"][number]["run"],
      at: change.at.toISOString(),
      layout: toLayoutTimeText(Math.floor(layoutSecondsAt(facts, change.slotCode, change.at))),
      note: change.note,
    })),
  };
}
