import type { Incident, NewTrip } from "../../../shared/night.ts";
import { type Asked, changeNight, DEEDS, pick } from "./change-night.ts";
import type { NightDeps } from "./deps.ts";
import { inTheFuture, unknownIn } from "./errors.ts";
import { toIncidents } from "./incident-board.ts";

/**
 * Notes that a breaker opened.
 * @throws Refusal not-found, night-not-running, unprocessable
 */
export function noteTrip(deps: NightDeps, asked: Asked, trip: NewTrip): Promise<Incident> {
  return changeNight(deps, asked, DEEDS.trip, async (night) => {
    const { transaction, session } = night;
    const where = { clubId_code: { clubId: session.club.id, code: trip.district } };
    if ((await transaction.district.findUnique({ where, select: { id: true } })) === null)
      throw unknownIn("district", "district", trip.district);
    const now = deps.clock.now();
    const at = trip.at === undefined ? now : new Date(trip.at);
    if (at > now) throw inTheFuture(trip.at ?? "");
    const { id } = await transaction.nightTrip.create({
      data: {
        clubId: session.club.id,
        sessionId: session.id,
        districtCode: trip.district,
        measuredMa: trip.measuredMa,
        at,
        note: trip.note,
      },
    });
    return pick(toIncidents(await night.read()), (incident) => incident.id === id);
  });
}
