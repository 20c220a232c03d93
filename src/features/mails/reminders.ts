import { eveningPath } from "../../../shared/page-addresses.ts";
import type { DatabaseClient } from "../../database/client.ts";
import { inTransaction } from "../../database/transaction.ts";
import { readTurns, type Turn } from "../../database/turns.ts";
import type { Clock } from "../../lib/clock.ts";
import { dayAndTime, wallClock } from "../../lib/local-time.ts";
import type { Mailer } from "../../mail/mailer.ts";
import type { Chore } from "../../mail/post-office.ts";

const AHEAD_MS = 24 * 3_600_000;

interface ReminderDeps {
  readonly database: DatabaseClient;
  readonly mailer: Mailer;
  readonly clock: Clock;
  readonly publicUrl: () => string;
}

type Reminded = Awaited<ReturnType<typeof readTurns>>[number];

/**
 * Reminds everybody, once, of what they have in a night that begins within a day. A night that was moved is reminded of
 * anew.
 */
export const reminderChore = (deps: ReminderDeps): Chore => ({
  name: "queue-reminders",
  every: "*/10 * * * *",
  do: () => queueReminders(deps),
});

export async function queueReminders({ database, mailer, clock, publicUrl }: ReminderDeps): Promise<void> {
  const now = clock.now();
  const begins = { after: now, until: new Date(now.getTime() + AHEAD_MS) };
  for (const turns of byPersonAndNight(await readTurns(database, { begins })))
    await inTransaction(database, (transaction) => mailer.queue(transaction, toReminder(turns, publicUrl())));
}

function byPersonAndNight(turns: readonly Reminded[]): readonly (readonly [Reminded, ...Reminded[]])[] {
  const groups = new Map<string, [Reminded, ...Reminded[]]>();
  for (const turn of turns) {
    const group = groups.get(keyOf(turn));
    if (group) group.push(turn);
    else groups.set(keyOf(turn), [turn]);
  }
  return [...groups.values()];
}

const keyOf = ({ sessionId, personId, begins }: Reminded) =>
  `reminder ${sessionId} ${personId} ${begins.toISOString()}`;

const toReminder = (turns: readonly [Reminded, ...Reminded[]], publicUrl: string) => {
  const [first] = turns;
  return {
    key: keyOf(first),
    clubId: first.clubId,
    to: first.email,
    template: "reminder" as const,
    data: {
      club: first.club,
      night: first.night,
      begins: dayAndTime(first.begins, first.zone),
      lines: turns.map(toLine),
      venueNote: first.venueNote,
      link: new URL(eveningPath(first.clubCode, first.session), publicUrl).href,
    },
  };
};

const toLine = ({ fromAt, zone, what, where, handset }: Turn) =>
  [`${wallClock(fromAt, zone)} ${what}`, where && `from ${where}`, handset && `with handset ${handset}`]
    .filter(Boolean)
    .join(", ");
