import { type Club, club } from "../../../shared/clubs.ts";
import { clubTable } from "../../database/records/clubs.ts";
import { isTimeZone } from "../../lib/local-time.ts";
import type { RecordKind } from "../../records/record-kind.ts";
import { unknownTimeZone } from "./errors.ts";

// one service keeps the clubs of a region, not of the world
const MOST_CLUBS = 1_000;

export const clubKind: RecordKind<Club> = {
  one: "club",
  many: "clubs",
  about: "A club owns everything else: its railway, roster, handsets, members, timetables and sessions.",
  schema: club,
  example: { code: "north", name: "Northfold Model Railway Circle", timeZone: "Europe/London", scale: 87 },
  table: clubTable,
  keep: "keep-club",
  most: MOST_CLUBS,
  used: "club",
  flaws: (body) =>
    isTimeZone(body.timeZone) ? [] : [{ path: ["timeZone"], detail: unknownTimeZone(body.timeZone) }],
};
