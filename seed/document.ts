import { type ClubDocument, clubDocument } from "../shared/documents.ts";
import { handsets } from "./handsets.ts";
import { demoLayout } from "./layout/index.ts";
import { members } from "./members.ts";
import { plantInto, plants } from "./planted.ts";
import { readings } from "./readings.ts";
import { demoRoster } from "./roster.ts";
import { CLEAN, PLANTED, sessions } from "./sessions.ts";
import { cleanWorkings } from "./timetable/clean.ts";
import { toTrain } from "./timetable/working.ts";

/** All records of the demo club. */
export const demoDocument: ClubDocument = clubDocument.parse({
  layout: demoLayout,
  roster: demoRoster,
  handsets,
  members,
  timetables: [
    {
      code: CLEAN.timetable,
      name: "Weekday morning",
      note: "6:40 to 12:00 by the layout clock.",
      versions: [
        { number: CLEAN.version, state: "issued", trains: cleanWorkings.map(toTrain), note: "Runs." },
        {
          number: PLANTED.version,
          state: "draft",
          trains: plantInto(cleanWorkings, plants).map(toTrain),
          note: "With faults planted on purpose: each train that has one says which.",
        },
      ],
    },
  ],
  sessions,
  readings,
});
