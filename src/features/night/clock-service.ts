import { parseLayoutTime } from "../../../shared/layout-time.ts";
import type { NewClockChange, NightClock } from "../../../shared/night.ts";
import { assertCurrent, type Precondition } from "../../lib/precondition.ts";
import { type Asked, changeNight, DEEDS, type NightInHand } from "./change-night.ts";
import { clockVersion, findClockSlot, readSlotClock, toClock } from "./clock-board.ts";
import { beginNight } from "./crew-store.ts";
import type { NightDeps } from "./deps.ts";
import { alreadySo, unknownIn } from "./errors.ts";
import type { NightFacts } from "./facts.ts";

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
      await beginNight(night.transaction, night.session.id);
    await record(night, facts, slot, change);
    return toClock(await night.read());
  });
}

function findSlot(facts: NightFacts, wanted: string | undefined): string {
  if (wanted === undefined) return findClockSlot(facts);
  if (facts.slots.some(({ code }) => code === wanted)) return wanted;
  throw unknownIn("slot", "slot", wanted);
}

function assertChanges(facts: NightFacts, slot: string, { run }: NewClockChange): void {
  const { running } = readSlotClock(facts, slot, nextInstant(facts));
  if (run === "start" && running) throw alreadySo(`The clock of slot ${slot} runs.`);
  if (run === "pause" && !running) throw alreadySo(`The clock of slot ${slot} stands.`);
}

/** Now, but never before what was done last: clocks of two servers may differ by a little. */
function nextInstant({ now, log }: NightFacts): Date {
  const last = log.clock.at(-1)?.at;
  return last !== undefined && last > now ? last : now;
}

async function record(
  { transaction, session }: NightInHand,
  facts: NightFacts,
  slot: string,
  change: NewClockChange,
): Promise<void> {
  const at = nextInstant(facts);
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
