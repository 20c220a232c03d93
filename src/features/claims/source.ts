import { findNight } from "../../database/bookings.ts";
import type { Database } from "../../database/client.ts";
import { reachClub } from "../../records/reach-club.ts";
import { noSession } from "./errors.ts";
import { readLive } from "./live.ts";
import { makePlan } from "./make-plan.ts";
import type { NightPlan } from "./plan.ts";
import { readPlanRows, readPlanStamp } from "./plan-store.ts";
import { type NightView, viewNight } from "./view.ts";

export interface NightAddress {
  readonly club: string;
  readonly session: string;
}

/** Nights that are looked at now; a club has few at a time. */
const KEPT = 30;

export type NightSource = ReturnType<typeof createNightSource>;

/**
 * Reads nights. Their plans change seldom and are asked for all the time, so each is kept until the stamp of what it was
 * made from changes; whoever comes while one is made waits for the same.
 */
export function createNightSource(database: Database) {
  const kept = new Map<string, { readonly stamp: string; readonly plan: Promise<NightPlan> }>();

  async function readView({ club, session }: NightAddress): Promise<NightView> {
    const night = await findNight(database, await reachClub(database, club), session);
    if (night === undefined) throw noSession(session);
    const live = await readLive(database, night);
    const { pickUpMs, handInMs } = live.booking;
    // names of the club and the night are in nobody's stamp
    const stamp = `${await readPlanStamp(database, night)} ${pickUpMs} ${handInMs} ${night.club.code} ${night.club.timeZone}`;
    const before = kept.get(night.id);
    if (before?.stamp === stamp) return viewNight(await before.plan, live);
    const plan = readPlanRows(database, night).then((rows) => makePlan(rows, { pickUpMs, handInMs }));
    kept.delete(night.id);
    kept.set(night.id, { stamp, plan });
    for (const oldest of kept.keys()) if (kept.size > KEPT) kept.delete(oldest);
    // what could not be read is not kept
    plan.catch(() => {
      if (kept.get(night.id)?.plan === plan) kept.delete(night.id);
    });
    return viewNight(await plan, live);
  }

  return { readView };
}
