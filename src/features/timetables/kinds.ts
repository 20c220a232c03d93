import { LIMITS } from "../../../shared/limits.ts";
import type { Timetable, Train } from "../../../shared/timetable.ts";
import { timetable, train } from "../../../shared/timetable.ts";
import { code } from "../../../shared/units.ts";
import type { Database } from "../../database/client.ts";
import { timetableTable, trainTable } from "../../database/records/timetables.ts";
import type { RecordKind, Reference } from "../../records/record-kind.ts";
import { findBackwardsTimes, findTrainFlaws, findUnlinkedSections } from "./train-flaws.ts";

export const timetableKind: RecordKind<Timetable> = {
  one: "timetable",
  many: "timetables",
  about: "A timetable holds its versions, and they the trains; all of them go when it is removed.",
  schema: timetable,
  example: { code: "winter", name: "Winter timetable" },
  table: timetableTable,
  keep: "keep-timetables",
  most: LIMITS.timetables,
  used: "timetable",
};

export const trainKind: RecordKind<Train> = {
  one: "train",
  many: "trains",
  about: "A train is one working: what runs, over which sections, when, by the layout clock.",
  schema: train,
  example: {
    code: "101",
    name: "Morning goods",
    motivePower: [{ locomotive: "E7" }],
    rakes: ["R2"],
    laterMinutes: 5,
    requires: ["main line"],
    path: [
      { section: "W1", depart: "10:00" },
      { section: "L1" },
      { section: "M1", arrive: "10:04", depart: "10:06" },
      { section: "L2" },
      { section: "E1", arrive: "10:10" },
    ],
  },
  table: trainTable,
  keep: "keep-timetables",
  most: LIMITS.trains,
  filters: {
    section: {
      schema: code.meta({ description: "Only those whose path has this section." }),
      where: (sectionCode: string) => ({ path: { some: { sectionCode } } }),
    },
    locomotive: {
      schema: code.meta({ description: "Only those with this locomotive." }),
      where: (locomotiveCode: string) => ({ motivePower: { some: { locomotiveCode } } }),
    },
    rake: {
      schema: code.meta({ description: "Only those with this rake." }),
      where: (rakeCode: string) => ({ rakes: { some: { rakeCode } } }),
    },
  },
  references: (body) => [
    ...body.motivePower.map(
      ({ locomotive }, at): Reference => ({
        to: "locomotive",
        code: locomotive,
        path: ["motivePower", at, "locomotive"],
      }),
    ),
    ...body.rakes.map((rake, at): Reference => ({ to: "rake", code: rake, path: ["rakes", at] })),
    ...body.path.map(
      ({ section }, at): Reference => ({ to: "section", code: section, path: ["path", at, "section"] }),
    ),
  ],
  flaws: findTrainFlaws,
  inspect: async (database, { club }, body) => [
    ...findBackwardsTimes(body),
    ...findUnlinkedSections(body, await readLinksAlong(database, club.id, body)),
  ],
};

/** The links at the sections of a path. */
async function readLinksAlong(database: Database, clubId: string, { path }: Train) {
  const sections = { in: [...new Set(path.map(({ section }) => section))] };
  const links = await database.link.findMany({
    where: { clubId, OR: [{ fromCode: sections }, { toCode: sections }] },
    select: { fromCode: true, toCode: true, oneWay: true },
  });
  return links.map(({ fromCode, toCode, oneWay }) => ({ from: fromCode, to: toCode, oneWay }));
}
