import { z } from "zod";
import { calendarAddress } from "../../../shared/calendar.ts";
import { code } from "../../../shared/units.ts";
import { actorOf } from "../../http/actor.ts";
import type { HttpApp } from "../../http/create-http.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import type { CalendarService } from "./service.ts";

export const CALENDAR = "text/calendar";

const EXAMPLE = [
  "BEGIN:VCALENDAR",
  "VERSION:2.0",
  "PRODID:-//Running Foreman//Operating sessions//EN",
  "BEGIN:VEVENT",
  "UID:night-0193@running-foreman",
  "DTSTAMP:20270102T030405Z",
  "DTSTART:20270320T190000Z",
  "DTEND:20270320T220000Z",
  "SUMMARY:March night",
  "END:VEVENT",
  "END:VCALENDAR",
  "",
].join("\r\n");

export const calendarFile = (description: string) => ({
  description,
  content: { [CALENDAR]: { schema: z.string().meta({ examples: [EXAMPLE] }) } },
});

export function registerSessionCalendar(app: HttpApp, service: CalendarService): void {
  app.get(
    "/api/clubs/:club/sessions/:session/calendar.ics",
    {
      schema: {
        tags: ["calendar"],
        operationId: "readSessionCalendar",
        summary: "Read a night as a calendar file",
        description:
          "One event of RFC 5545 from the first slot's start to the last one's end, in UTC, with slots and notes as its description.",
        params: z.strictObject({ club: code, session: code }),
        response: {
          200: calendarFile("The night."),
          ...refusalResponses("validation-failed", "not-found"),
        },
      },
    },
    async ({ params: { club, session } }, reply) => {
      const text = await service.readSession(club, session);
      return reply
        .type(`${CALENDAR}; charset=utf-8`)
        .header("content-disposition", `attachment; filename="${encodeURIComponent(session)}.ics"`)
        .send(text);
    },
  );
}

/** One's own turns in all clubs, at an address that is its own key: calendar programs can't sign in. */
export function registerFeed(app: HttpApp, service: CalendarService, publicUrl: () => string): void {
  const schema = { tags: ["calendar"] };
  app.post(
    "/api/me/calendar",
    {
      config: { access: "signed-in" },
      schema: {
        ...schema,
        operationId: "makeCalendarAddress",
        summary: "Make a secret address of one's own calendar",
        description: "One a person: a new one ends the one before.",
        response: { 201: calendarAddress, ...refusalResponses("not-permitted") },
      },
    },
    async (request, reply) => {
      const secret = await service.makeFeed(actorOf(request).personId);
      return reply.code(201).send({ url: `${publicUrl()}api/calendar/${secret}.ics` });
    },
  );
  app.delete(
    "/api/me/calendar",
    {
      config: { access: "signed-in" },
      schema: {
        ...schema,
        operationId: "revokeCalendarAddress",
        summary: "Revoke the address of one's own calendar",
        description: "It leads nowhere from then on. Nothing happens where there is none.",
        response: {
          204: z.null().meta({ description: "There is none any more." }),
          ...refusalResponses("not-permitted"),
        },
      },
    },
    async (request, reply) => {
      await service.revokeFeed(actorOf(request).personId);
      return reply.code(204).send(undefined as never);
    },
  );
  app.get(
    "/api/calendar/:secret.ics",
    {
      config: { access: "public" },
      schema: {
        ...schema,
        operationId: "readCalendar",
        summary: "Read somebody's turns by their secret address",
        description:
          "Every train and duty of theirs, in all their clubs, from the pick-up of the handset to its hand-in, in UTC (RFC 5545). Meant for calendar programs to follow.",
        params: z.strictObject({ secret: z.string().regex(/^[\w-]{43}$/) }),
        response: {
          200: calendarFile("Their turns."),
          ...refusalResponses("validation-failed", "not-found"),
        },
      },
    },
    async ({ params: { secret } }, reply) => {
      const text = await service.readFeed(secret);
      return reply.type(`${CALENDAR}; charset=utf-8`).header("cache-control", "private, no-cache").send(text);
    },
  );
}
