import { parseLayoutTime } from "../../../shared/layout-time.ts";
import type { NewClockChange, NightClock } from "../../../shared/night.ts";
import type { Transaction } from "../../database/transaction.ts";
import { assertCurrent, type Precondition } from "../../lib/precondition.ts";
import { type Asked, changeNight, DEEDS, type NightInHand } from "./change-night.ts";
import { clockVersion, findClockSlot, readSlotClock, toClock } from "./clock-board.ts";
import type { NightDeps } from "./deps.ts";
import { alreadySo, unknownIn } from "./errors.ts";
import type { NightFacts } from "./facts.ts";
import { readClockChanges } from "./store.ts";

/**
 * Starts, pauses or sets the layout clock. Starting the clock of a locked night makes it a running one; starting that of
 * another slot pauses the one before.
 * @throws Refusal not-found, night-not-running, already-done, version-mismatch, unprocessable
 */
export function changeClock(
  deps: NightDeps,
  asked: Asked,
  change: NewClockChange,
  precondition: Precondition,
): Promise<NightClock> {
  return changeNight(deps, asked, DEEDS.clock, async (night) => {
    const facts = await night.read();
    assertCurrent(precondition, clockVersion(facts.log.clock));
    const slot = findSlot(facts, change.slot);
    assertChanges(facts, slot, change);
    if (night.booking === "locked" && change.run === "start")
      await deps.beginNight(night.transaction, night.session);
    await record(night, facts, slot, change);
    return toClock(await night.read());
  });
}

/** Pauses whatever clock of a night runs, for when the night is over; the night must be held. */
export const createStopClock =
  ({ clock }: Pick<NightDeps, "clock">) =>
  async (transaction: Transaction, sessionId: string): Promise<void> => {
    const changes = await readClockChanges(transaction, sessionId);
    const last = changes.findLast(({ run }) => run !== "set");
    if (last?.run !== "start") return;
    const { clubId, slotCode } = last;
    const at = nextInstant(changes, clock.now());
    await transaction.nightClockChange.create({
      data: { clubId, sessionId, slotCode, run: "pause", at, position: changes.length },
    });
  };

function findSlot(facts: NightFacts, wanted: string | undefined): string {
  if (wanted === undefined) return findClockSlot(facts);
  if (facts.slots.some(({ code }) => code === wanted)) return wanted;
  throw unknownIn("slot", "slot", wanted);
}

function assertChanges(facts: NightFacts, slot: string, { run }: NewClockChange): void {
  const { running } = readSlotClock(facts, slot, nextInstant(facts.log.clock, facts.now));
  if (run === "start" && running) throw alreadySo(`The clock of slot ${slot} runs.`);
  if (run === "pause" && !running) throw alreadySo(`The clock of slot ${slot} stands.`);
}

/** Now, but never before what was done last: clocks of two servers may differ by a little. */
function nextInstant(changes: readonly { readonly at: Date }[], now: Date): Date {
  const last = changes.at(-1)?.at;
  return last !== undefined && last > now ? last : now;
}

async function record(
  { transaction, session }: NightInHand,
  facts: NightFacts,
  slot: string,
  change: NewClockChange,
): Promise<void> {
  const at = nextInstant(facts.log.clock, facts.now);
  const shared = { clubId: session.club.id, sessionId: session.id, at };
  const before = findClockSlot(facts);
  const stops = change.run === "start" && before !== slot && readSlotClock(facts, before, at).running;
  const rows = [
    ...(stops ? [{ ...shared, slotCode: before, run: "pause" }] : []),
    {
      ...shared,
      slotCode: slot,
      run: change.run,
      layoutS: change.layout === undefined ? null : parseLayoutTime(change.layout),
      note: change.note,
    },
  ];
  for (const [i, row] of rows.entries())
    await transaction.nightClockChange.create({ data: { ...row, position: facts.log.clock.length + i } });
}
