import type { Attendance, DeskMove, NewAttendance, NightHandset } from "../../../shared/night.ts";
import type * as rows from "../../database/generated/client.ts";
import { type Asked, changeNight, DEEDS, type NightInHand } from "./change-night.ts";
import type { NightDeps } from "./deps.ts";
import { toAttendance, toHandset } from "./desk-board.ts";
import { alreadySo, handsetNotThere, unknownIn } from "./errors.ts";
import { type NightFacts, toPerson } from "./facts.ts";

/**
 * Books a member on or off. Doing again what is done already is no mistake, and changes nothing.
 * @throws Refusal not-found, night-not-running, unprocessable
 */
export function bookMember(
  deps: NightDeps,
  asked: Asked,
  { member, here }: NewAttendance,
): Promise<Attendance> {
  return changeNight(deps, asked, DEEDS.attendance, async (night) => {
    await assertMember(night, member);
    const facts = await night.read();
    const open = facts.log.attendances.find(
      ({ memberCode, until }) => memberCode === member && until === null,
    );
    const { transaction, session } = night;
    if (here && !open)
      await transaction.nightAttendance.create({
        data: { clubId: session.club.id, sessionId: session.id, memberCode: member, since: facts.now },
      });
    if (!here && open)
      await transaction.nightAttendance.update({
        where: { id: open.id },
        data: { until: notBefore(open.since, facts.now) },
      });
    return toAttendance(await night.read(), member);
  });
}

/**
 * Moves a handset over the desk: out into a member's hands, in again, flat, or faulty.
 * @throws Refusal not-found, night-not-running, handset-out, already-done, unprocessable
 */
export function moveHandset(deps: NightDeps, asked: Asked, move: DeskMove): Promise<NightHandset> {
  const deed = move.to === "out" ? DEEDS.handOut : DEEDS.takeIn;
  return changeNight(deps, asked, deed, async (night) => {
    if (move.member !== undefined) await assertMember(night, move.member);
    const facts = await night.read();
    const handset = facts.handsets.find(({ code }) => code === move.handset);
    if (handset === undefined) throw unknownIn("handset", "handset", move.handset);
    const stay = facts.log.handsets.find(
      ({ handsetCode, until }) => handsetCode === handset.code && until === null,
    );
    assertMoves(facts, handset, stay, move);
    await putDown(night, stay, facts.now);
    if (move.to !== "in") await takeUp(night, move, notBefore(stay?.since, facts.now));
    await markRecord(night, handset, move);
    const after = await night.read();
    return toHandset(after, after.handsets.find(({ code }) => code === handset.code) ?? handset);
  });
}

/** One may be handed to nobody else, and not while it is known not to work; being told the same twice is told. */
function assertMoves(
  facts: NightFacts,
  { code, state }: rows.Handset,
  stay: rows.NightHandset | undefined,
  { to, member }: DeskMove,
): void {
  const holder = stay?.memberCode ? toPerson(facts, stay.memberCode).name : null;
  if (to === "out" && member !== undefined && stay?.memberCode === member)
    throw alreadySo(`${holder} has handset ${code} already.`);
  if (to === "out" && stay !== undefined)
    throw handsetNotThere(
      holder === null ? `Handset ${code} is ${stay.state}.` : `${holder} has handset ${code}.`,
    );
  if (to === "out" && state !== "ready")
    throw handsetNotThere(`Handset ${code} is ${state}, says its record.`);
  if (to === "in" && stay === undefined && state === "ready")
    throw alreadySo(`Handset ${code} is on the desk already.`);
  if ((to === "flat" || to === "faulty") && stay?.state === to)
    throw alreadySo(`Handset ${code} is marked ${to} already.`);
}

async function putDown({ transaction }: NightInHand, stay: rows.NightHandset | undefined, now: Date) {
  if (stay === undefined) return;
  const until = notBefore(stay.since, now);
  await transaction.nightHandset.update({ where: { id: stay.id }, data: { until } });
}

async function takeUp({ transaction, session }: NightInHand, { handset, to, member }: DeskMove, since: Date) {
  await transaction.nightHandset.create({
    data: {
      clubId: session.club.id,
      sessionId: session.id,
      handsetCode: handset,
      state: to,
      memberCode: member ?? null,
      since,
    },
  });
}

/** A faulty one is not to be planned with, and one that works again is. */
async function markRecord({ transaction }: NightInHand, { id, state }: rows.Handset, { to }: DeskMove) {
  const becomes = to === "faulty" ? "faulty" : to === "in" ? "ready" : state;
  if (becomes !== state) await transaction.handset.update({ where: { id }, data: { state: becomes } });
}

async function assertMember({ transaction, session }: NightInHand, code: string): Promise<void> {
  const where = { clubId_code: { clubId: session.club.id, code } };
  if ((await transaction.member.findUnique({ where, select: { id: true } })) === null)
    throw unknownIn("member", "member", code);
}

/** Clocks of two servers may differ by a little. */
const notBefore = (since: Date | undefined, now: Date): Date =>
  since !== undefined && since > now ? since : now;
