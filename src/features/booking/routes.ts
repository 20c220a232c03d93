import { z } from "zod";
import {
  booking,
  bookingBody,
  bookingSummaries,
  newBookingMove,
  newComing,
} from "../../../shared/booking.ts";
import { code } from "../../../shared/units.ts";
import { membershipOf } from "../../http/actor.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { entityTag, readPrecondition } from "../../http/preconditions.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import { Refusal } from "../../lib/refusal.ts";
import { changeHeaders } from "../../records/collection-schemas.ts";
import type { BookingService } from "./service.ts";

const nightParams = z.strictObject({ club: code, session: code });
const instant = z.iso.datetime({ offset: true });
const hours = z.strictObject({
  from: instant.optional().meta({ description: "Only nights not over at this instant." }),
  to: instant.optional().meta({ description: "Only nights that begin before this instant." }),
});
const tags = ["booking"];
const CHANGE = [
  "validation-failed",
  "malformed-json",
  "unsupported-media-type",
  "not-found",
  "conflict",
  "last-adult",
  "unprocessable",
] as const;
const VERSIONED = ["version-mismatch", "precondition-required"] as const;

export function registerBookingRoutes(app: HttpApp, service: BookingService): void {
  registerReading(app, service);
  registerChanges(app, service);
  registerComing(app, service);
}

function registerReading(app: HttpApp, service: BookingService): void {
  app.get(
    "/api/clubs/:club/bookings",
    {
      schema: {
        tags,
        operationId: "listBookings",
        summary: "List nights with how far they have come",
        description:
          "Each with how many of its trains and duties somebody has, and how many of them are one's own.",
        params: z.strictObject({ club: code }),
        querystring: hours,
        response: { 200: bookingSummaries, ...refusalResponses("validation-failed", "not-found") },
      },
    },
    async (request) => {
      const { club } = request.params;
      const { from, to } = request.query;
      const asked = {
        from: from === undefined ? from : new Date(from),
        to: to === undefined ? to : new Date(to),
      };
      return { items: await service.list(membershipOf(request, club), club, asked) };
    },
  );
  app.get(
    "/api/clubs/:club/sessions/:session/booking",
    {
      schema: {
        tags,
        operationId: "readBooking",
        summary: "Read a night's booking",
        description:
          "How far the night has come, where it may go, how it is manned; for whoever may book, what stops a draft. Its ETag is what If-Match of a change must name.",
        params: nightParams,
        response: { 200: booking, ...refusalResponses("validation-failed", "not-found") },
      },
    },
    async (request, reply) => {
      const read = await service.read(membershipOf(request, request.params.club), request.params);
      return reply.header("etag", entityTag(read.version)).send(read);
    },
  );
}

function registerChanges(app: HttpApp, service: BookingService): void {
  app.put(
    "/api/clubs/:club/sessions/:session/booking",
    {
      config: { access: "book" },
      schema: {
        tags,
        operationId: "replaceBooking",
        summary: "Say what everybody should know of a night",
        description:
          "Notes, the rule on second claims, and who will be there. Moving the night on is a request of its own.",
        params: nightParams,
        headers: changeHeaders,
        body: bookingBody.meta({
          examples: [
            {
              venueNote: "The side door is open from 18:30.",
              noteToAll: "Bring your own mug.",
              secondClaimFrom: "2027-03-13T18:00:00Z",
              attending: ["ada"],
            },
          ],
        }),
        response: { 200: booking, ...refusalResponses(...CHANGE, ...VERSIONED) },
      },
    },
    async (request, reply) => {
      const precondition = readPrecondition(request);
      const asker = membershipOf(request, request.params.club);
      const changed = await service.replace(asker, request.params, request.body, precondition);
      return reply.header("etag", entityTag(changed.version)).send(changed);
    },
  );
  app.post(
    "/api/clubs/:club/sessions/:session/booking/moves",
    {
      config: { access: "run-night" },
      schema: {
        tags,
        operationId: "moveBooking",
        summary: "Move a night on",
        description:
          "Opens it for claims, locks it, cancels it, and so on. Opening runs the check of every slot, and is refused while something stops one, unless a reason is given, which is kept. On the night the marshal may move it too.",
        params: nightParams,
        headers: changeHeaders,
        body: newBookingMove.meta({ examples: [{ to: "open" }] }),
        response: {
          200: booking,
          ...refusalResponses(...CHANGE, ...VERSIONED, "not-from-here", "night-stopped", "booking-holds"),
        },
      },
    },
    async (request, reply) => {
      const precondition = readPrecondition(request);
      const asker = membershipOf(request, request.params.club);
      const moved = await service.move(asker, request.params, request.body, precondition);
      return reply.header("etag", entityTag(moved.version)).send(moved);
    },
  );
}

function registerComing(app: HttpApp, service: BookingService): void {
  app.post(
    "/api/clubs/:club/sessions/:session/booking/coming",
    {
      config: { access: "claim" },
      schema: {
        tags,
        operationId: "sayComing",
        summary: "Say that one will be there, or not",
        description:
          "With a train or without: an adult who is there lets juniors claim. Whoever may book says it of others too.",
        params: nightParams,
        body: newComing.meta({ examples: [{ coming: true }] }),
        response: { 200: booking, ...refusalResponses(...CHANGE, "not-permitted") },
      },
    },
    async (request, reply) => {
      const asker = membershipOf(request, request.params.club);
      const { member } = request.body;
      if (member !== undefined && member !== asker.member && !asker.permissions.has("book"))
        throw new Refusal("not-permitted", "Members speak for themselves here.");
      const said = await service.come(asker, request.params, request.body);
      return reply.header("etag", entityTag(said.version)).send(said);
    },
  );
}
