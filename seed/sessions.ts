import type { z } from "zod";
import type { session } from "../shared/sessions.ts";

type Session = z.input<typeof session>;

export const CLEAN = { session: "spring-evening", timetable: "weekday", version: 1 } as const;
export const PLANTED = { session: "rehearsal", timetable: "weekday", version: 2 } as const;

const NIGHT = {
  clockRatio: 4,
  areas: [
    { area: "main", control: "digital" },
    { area: "branch", control: "analog" },
  ],
} satisfies Partial<Session>;

export const sessions: Session[] = [
  {
    ...NIGHT,
    code: CLEAN.session,
    name: "Spring evening",
    slots: [
      {
        code: "first",
        name: "First crew",
        startsAt: "2027-03-20T19:00",
        endsAt: "2027-03-20T20:20",
        layoutStart: "6:40",
        timetable: CLEAN.timetable,
        timetableVersion: CLEAN.version,
      },
      {
        code: "second",
        name: "Second crew",
        startsAt: "2027-03-20T20:40",
        endsAt: "2027-03-20T22:00",
        layoutStart: "6:40",
        timetable: CLEAN.timetable,
        timetableVersion: CLEAN.version,
      },
    ],
    note: "Twenty minutes of tea between the crews, while the stock is put back where the morning starts.",
  },
  {
    ...NIGHT,
    code: PLANTED.session,
    name: "Rehearsal with planted faults",
    slots: [
      {
        code: "only",
        name: "Faulty draft",
        startsAt: "2027-03-27T19:00",
        endsAt: "2027-03-27T20:20",
        layoutStart: "6:40",
        timetable: PLANTED.timetable,
        timetableVersion: PLANTED.version,
      },
    ],
    note: "Runs the faulty draft of the timetable: every kind of finding once. The seed's README lists them.",
  },
];
