import type { FastifyRequest } from "fastify";
import { z } from "zod";
import {
  attendance,
  deskMove,
  incident,
  newAttendance,
  newClockChange,
  newTrip,
  night,
  nightClock,
  nightHandset,
} from "../../../shared/night.ts";
import { code } from "../../../shared/units.ts";
import type { HttpApp } from "../../http/create-http.ts";
import { readRetryKey, retryHeaders } from "../../http/idempotency.ts";
import { entityTag, readPrecondition } from "../../http/preconditions.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import { changeHeaders } from "../../records/collection-schemas.ts";
import { findUnstorableText, refuseFlaws } from "../../records/flaws.ts";
import type { Asked, NightAddress } from "./change-night.ts";
import { changeClock } from "./clock-service.ts";
import type { NightDeps } from "./deps.ts";
import { bookMember, moveHandset } from "./desk-service.ts";
import { createReadNight } from "./read-night.ts";
import { noteTrip } from "./trip-service.ts";

export const NIGHT_URL = "/api/clubs/:club/sessions/:session/night";
export const nightParams = z.strictObject({ club: code, session: code });
export const tags = ["night"];
export const CHANGE_REFUSALS = [
  "validation-failed",
  "malformed-json",
  "body-too-large",
  "unsupported-media-type",
  "not-found",
  "conflict",
  "night-not-running",
  "idempotency-key-reused",
] as const;
const config = { access: "run-night" } as const;

/**
 * A request for a change: what it is about, and its key.
 * @throws Refusal validation-failed
 */
export function asked<Address extends NightAddress>(
  request: FastifyRequest & { readonly params: Address },
): Asked<Address> {
  refuseFlaws("validation-failed", findUnstorableText(request.body));
  return { address: request.params, key: readRetryKey(request) };
}

/** The live board, and everything done at it but to trains. */
export function registerNightRoutes(app: HttpApp, deps: NightDeps): void {
  registerRead(app, deps);
  registerClock(app, deps);
  registerAttendance(app, deps);
  registerDesk(app, deps);
  registerTrips(app, deps);
}

function registerRead(app: HttpApp, deps: NightDeps): void {
  const schema = {
    tags,
    operationId: "readNight",
    summary: "Read a night as it is run",
    description:
      "Everything the live board shows: the layout clock, trains with driver, handset, road and address, handsets, people, incidents. A night that has not begun reads as it is planned.",
    params: nightParams,
    response: { 200: night, ...refusalResponses("validation-failed", "not-found") },
  };
  const readNight = createReadNight(deps);
  app.get(NIGHT_URL, { schema }, async ({ params }, reply) =>
    reply
      .type("application/json; charset=utf-8")
      .serializer(asIs)
      .send((await readNight(params)) as never),
  );
}

const asIs = (text: unknown) => String(text);

function registerClock(app: HttpApp, deps: NightDeps): void {
  const schema = {
    tags,
    operationId: "changeNightClock",
    summary: "Start, pause or correct the layout clock",
    description:
      "A pause stops layout time while real time runs on. Starting the clock of a locked night makes it a running one. Starting the clock of another slot pauses that of the slot before. With If-Match only if nobody touched the clock since it was read.",
    params: nightParams,
    headers: z.looseObject({ ...changeHeaders.shape, ...retryHeaders.shape }),
    body: newClockChange.meta({ examples: [{ run: "start" }] }),
    response: {
      200: nightClock,
      ...refusalResponses("already-done", "version-mismatch", "unprocessable", ...CHANGE_REFUSALS),
    },
  };
  app.post(`${NIGHT_URL}/clock`, { schema, config }, async (request, reply) => {
    const stated = request.headers["if-match"] !== undefined;
    const precondition = stated ? readPrecondition(request) : ({ exists: true } as const);
    const clock = await changeClock(deps, asked(request), request.body, precondition);
    return reply.header("etag", entityTag(clock.version)).send(clock);
  });
}

function registerAttendance(app: HttpApp, deps: NightDeps): void {
  const schema = {
    tags,
    operationId: "bookOnNight",
    summary: "Book a member on or off",
    description: "Whoever is here already may be booked on again: it changes nothing.",
    params: nightParams,
    headers: retryHeaders,
    body: newAttendance.meta({ examples: [{ member: "ada", here: true }] }),
    response: { 200: attendance, ...refusalResponses("unprocessable", ...CHANGE_REFUSALS) },
  };
  app.post(`${NIGHT_URL}/attendance`, { schema, config }, async (request) =>
    bookMember(deps, asked(request), request.body),
  );
}

function registerDesk(app: HttpApp, deps: NightDeps): void {
  const schema = {
    tags,
    operationId: "moveNightHandset",
    summary: "Move a handset over the desk",
    description:
      "Out into a member's hands, in again, flat, or faulty, which marks its record too. A handset is in one pair of hands at most, whatever the night.",
    params: nightParams,
    headers: retryHeaders,
    body: deskMove.meta({ examples: [{ handset: "H1", to: "out", member: "ada" }] }),
    response: {
      200: nightHandset,
      ...refusalResponses("already-done", "handset-out", "unprocessable", ...CHANGE_REFUSALS),
    },
  };
  app.post(`${NIGHT_URL}/handset-desk`, { schema, config }, async (request) =>
    moveHandset(deps, asked(request), request.body),
  );
}

function registerTrips(app: HttpApp, deps: NightDeps): void {
  const schema = {
    tags,
    operationId: "noteNightTrip",
    summary: "Note that a breaker opened",
    description:
      "Clear the fault before the breaker is closed again; whatever concerns the mains is for a qualified person under local rules.",
    params: nightParams,
    headers: retryHeaders,
    body: newTrip.meta({ examples: [{ district: "D-West", measuredMa: 2_900, note: "At the crossover" }] }),
    response: { 201: incident, ...refusalResponses("unprocessable", ...CHANGE_REFUSALS) },
  };
  app.post(`${NIGHT_URL}/trips`, { schema, config }, async (request, reply) =>
    reply.code(201).send(await noteTrip(deps, asked(request), request.body)),
  );
}
