import { type Walk, walk } from "../../../shared/layout.ts";
import { LIMITS } from "../../../shared/limits.ts";
import { code } from "../../../shared/units.ts";
import { readRecords } from "../../database/records/read-records.ts";
import { walkTable } from "../../database/records/track.ts";
import { clashesByKey } from "../../records/clashes-by-key.ts";
import type { RecordKind } from "../../records/record-kind.ts";
import { walksNowhere, walkTwice } from "./errors.ts";

export const walkKind: RecordKind<Walk> = {
  one: "walk",
  many: "walks",
  about:
    "A walk says how long it takes on foot from one place to another. Without one it is reckoned from the places' coordinates.",
  schema: walk,
  example: { code: "west-east", from: "west", to: "east", seconds: 40 },
  table: walkTable,
  keep: "keep-layout",
  most: LIMITS.walks,
  filters: {
    place: {
      schema: code.meta({ description: "Only those from or to this place." }),
      where: (place: string) => ({ OR: [{ fromCode: place }, { toCode: place }] }),
    },
  },
  references: ({ from, to }) => [
    { to: "place", code: from, path: ["from"] },
    { to: "place", code: to, path: ["to"] },
  ],
  flaws: ({ from, to }) => (from === to ? [{ path: ["to"], detail: walksNowhere(from) }] : []),
  clashes: (walks) =>
    clashesByKey(
      walks,
      ({ from, to }) => [{ key: `${from} to ${to}`, path: ["to"] }],
      (way, other) => walkTwice(way, other.code),
    ),
  rivals: (database, scope, { from, to }) =>
    readRecords(database, walkTable, scope, { where: { fromCode: from, toCode: to } }),
};
