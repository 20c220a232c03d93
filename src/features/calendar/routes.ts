import { z } from "zod";
import { code } from "../../../shared/units.ts";
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
