import type {
  Booking,
  BookingBody,
  BookingState,
  BookingSummary,
  NewBookingMove,
  NewComing,
  SlotBlock,
} from "../../../shared/booking.ts";
import {
  type BookedNight,
  type BookingNow,
  findJuniorsAlone,
  findNight,
  holdNight,
  type JuniorAlone,
  readBooking,
  readManning,
} from "../../database/bookings.ts";
import type { Database, DatabaseClient } from "../../database/client.ts";
import { inTransaction, type Transaction } from "../../database/transaction.ts";
import type { Membership } from "../../http/actor.ts";
import { assertCurrent, type Precondition } from "../../lib/precondition.ts";
import { findUnstorableText, refuseFlaws } from "../../records/flaws.ts";
import { lookAgain } from "../../records/look-again.ts";
import { reachClub } from "../../records/reach-club.ts";
import { assertMayOpen, type CheckSlot, findBlocks } from "./blocks.ts";
import {
  claimsLeft,
  lastAdult,
  moveNotYours,
  noMember,
  noSession,
  notFromHere,
  oneFault,
  WHO_COMES,
} from "./errors.ts";
import { canMove, mayMove, toBookingAnswer, toSummary } from "./mapper.ts";
import * as store from "./store.ts";

export interface NightAddress {
  readonly club: string;
  readonly session: string;
}

export interface BookingDeps {
  readonly database: DatabaseClient;
  readonly checkSlot: CheckSlot;
  readonly stopClock: StopClock;
  readonly tellAll: TellAll;
}

/** Pauses the layout clock of a night that is about to run no more, if it runs. */
export type StopClock = (transaction: Transaction, sessionId: string) => Promise<void>;

/** Passes a note on to whoever comes to the night, with the change that brings it. */
export type TellAll = (transaction: Transaction, night: BookedNight, note: string) => Promise<void>;

export type BookingService = ReturnType<typeof createBookingService>;

/** While a night is in one of these, people reckon with it. */
const ON: ReadonlySet<BookingState> = new Set(["open", "locked", "running"]);

/** Books nights. Whoever asks is known by what they are in the club. */
export function createBookingService({ database, checkSlot, stopClock, tellAll }: BookingDeps) {
  async function reach(handle: Database, { club, session }: NightAddress): Promise<BookedNight> {
    const night = await findNight(handle, await reachClub(handle, club), session);
    if (night) return night;
    throw noSession(session);
  }

  async function answer(asker: Membership, night: BookedNight, booking: BookingNow): Promise<Booking> {
    const slots = await readManning(database, night.club.id, [night.id], asker.member);
    const looks = booking.state === "draft" && asker.permissions.has("book");
    return toBookingAnswer(night, booking, slots, {
      attending: await store.readAttending(database, night.id),
      blocks: looks ? await findBlocks(checkSlot, night, slots) : null,
      permissions: asker.permissions,
    });
  }

  /** Changes a booking from the version it was read at, then reads what came out of it. */
  async function change(
    asker: Membership,
    address: NightAddress,
    precondition: Precondition | undefined,
    work: (transaction: Transaction, night: BookedNight, now: BookingNow) => Promise<BookingNow | undefined>,
  ): Promise<Booking> {
    const { night, booking } = await lookAgain(() =>
      inTransaction(
        database,
        async (transaction) => {
          const night = await reach(transaction, address);
          await holdNight(transaction, night);
          const now = await readBooking(transaction, night.id);
          if (precondition) assertCurrent(precondition, now.version);
          const booking = await work(transaction, night, now);
          return booking && { night, booking };
        },
        "ReadCommitted",
      ),
    );
    return answer(asker, night, booking);
  }

  return {
    async read(asker: Membership, address: NightAddress): Promise<Booking> {
      const night = await reach(database, address);
      return answer(asker, night, await readBooking(database, night.id));
    },

    async list(
      asker: Membership,
      club: string,
      hours: { readonly from: Date | undefined; readonly to: Date | undefined },
    ): Promise<BookingSummary[]> {
      const { id } = await reachClub(database, club);
      const nights = await store.listNights(database, id, hours);
      const slots = await readManning(
        database,
        id,
        nights.map((night) => night.id),
        asker.member,
      );
      return nights
        .map((night) =>
          toSummary(
            night,
            slots.filter(({ sessionId }) => sessionId === night.id),
          ),
        )
        .sort((a, b) => (a.startsAt < b.startsAt ? -1 : a.startsAt > b.startsAt ? 1 : 0));
    },

    /** What the secretary says of the night. */
    replace(asker: Membership, address: NightAddress, body: BookingBody, precondition: Precondition) {
      refuseFlaws("validation-failed", findUnstorableText(body));
      return change(asker, address, precondition, async (transaction, night, now) => {
        const [stranger] = await store.findStrangers(transaction, night, body.attending);
        if (stranger !== undefined)
          throw oneFault(`/body/attending/${body.attending.indexOf(stranger)}`, noMember(stranger));
        const alone = await findJuniorsAlone(transaction, night.id);
        await store.writeAttending(transaction, night, body);
        await assertNoneLeftAlone(transaction, night, alone);
        const isNews = body.noteToAll !== "" && body.noteToAll !== now.noteToAll;
        if (isNews && ON.has(now.state)) await tellAll(transaction, night, body.noteToAll);
        return store.writeBooking(transaction, night, {
          venueNote: body.venueNote,
          noteToAll: body.noteToAll,
          secondClaimFrom: body.secondClaimFrom === null ? null : new Date(body.secondClaimFrom),
        });
      });
    },

    /** Whoever may book says it of anyone, others of themselves; it needs no version, as nobody else's word is lost. */
    come(
      asker: Membership,
      address: NightAddress,
      { member = asker.member ?? undefined, coming }: NewComing,
    ) {
      if (member === undefined) throw oneFault("/body/member", WHO_COMES);
      return change(asker, address, undefined, async (transaction, night, now) => {
        const [stranger] = await store.findStrangers(transaction, night, [member]);
        if (stranger !== undefined) throw oneFault("/body/member", noMember(stranger));
        const alone = await findJuniorsAlone(transaction, night.id);
        const changed = await store.writeComing(transaction, night, member, coming);
        await assertNoneLeftAlone(transaction, night, alone);
        return changed ? store.writeBooking(transaction, night, { state: now.state }) : now;
      });
    },

    /** @throws Refusal not-from-here, not-permitted, night-stopped, booking-holds */
    async move(
      asker: Membership,
      address: NightAddress,
      { to, reason }: NewBookingMove,
      precondition: Precondition,
    ): Promise<Booking> {
      refuseFlaws("validation-failed", findUnstorableText({ reason }));
      return lookAgain(async () => {
        const night = await reach(database, address);
        const before = await readBooking(database, night.id);
        assertCurrent(precondition, before.version);
        if (!canMove(before.state, to)) throw notFromHere(before.state, to);
        if (!mayMove(asker.permissions, before.state, to)) throw moveNotYours(to);
        const opens = before.state === "draft" && to === "open";
        const stopped = opens && (await looksStopped(night, asker, reason));
        const booking = await inTransaction(
          database,
          async (transaction) => {
            // what was looked at above must still be so
            if ((await holdNight(transaction, night)) !== night.version) return undefined;
            const now = await readBooking(transaction, night.id);
            if (now.version !== before.version) return undefined;
            if (now.state === "running") await stopClock(transaction, night.id);
            return makeMove(transaction, night, now, { to, reason: keptReason(now, to, reason, stopped) });
          },
          "ReadCommitted",
        );
        return booking && answer(asker, night, booking);
      });
    },
  };

  async function looksStopped(
    night: BookedNight,
    asker: Membership,
    reason: string | undefined,
  ): Promise<boolean> {
    const slots = await readManning(database, night.club.id, [night.id], asker.member);
    const blocks: SlotBlock[] = await findBlocks(checkSlot, night, slots);
    return assertMayOpen(blocks, reason);
  }
}

/** A reason is kept as long as what it excuses: a night opened in spite of something, or cancelled. */
function keptReason(
  now: BookingNow,
  to: NewBookingMove["to"],
  reason: string | undefined,
  stopped: boolean,
): string | null {
  if (to === "cancelled" || stopped) return reason ?? null;
  return to === "draft" || now.state === "draft" ? null : now.reason;
}

async function makeMove(
  transaction: Transaction,
  night: BookedNight,
  now: BookingNow,
  { to, reason }: { readonly to: BookingNow["state"]; readonly reason: string | null },
): Promise<BookingNow> {
  if (to === "draft" && now.state === "open") {
    // first the state, which claims look at: they then wait for us, and see a draft
    const booking = await store.writeBooking(transaction, night, { state: to, reason });
    const claims = await store.countClaims(transaction, night.id);
    if (claims > 0) throw claimsLeft(claims);
    await store.clearNight(transaction, night.id, to);
    return booking;
  }
  const figures = to === "open" && now.state === "draft" ? await store.readFigures(transaction, night) : {};
  const booking = await store.writeBooking(transaction, night, { state: to, reason, ...figures });
  if (to === "draft" || to === "cancelled") await store.clearNight(transaction, night.id, to);
  return booking;
}

/** An adult may stay away, but not from a slot in which a junior then has no other: whoever was alone before does not count. */
async function assertNoneLeftAlone(
  transaction: Transaction,
  { id }: BookedNight,
  before: readonly JuniorAlone[],
): Promise<void> {
  const known = new Set(before.map(({ slot, member }) => `${slot} ${member}`));
  const after = await findJuniorsAlone(transaction, id);
  const left = after.find(({ slot, member }) => !known.has(`${slot} ${member}`));
  if (left) throw lastAdult(left);
}
