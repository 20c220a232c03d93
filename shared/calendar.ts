import { z } from "zod";

/** The secret address of one's calendar, told once. */
export const calendarAddress = z
  .object({
    url: z.url().meta({
      description: "Whoever has it can read the calendar. It is not shown again; a new one ends it.",
    }),
  })
  .meta({ id: "CalendarAddress" });
