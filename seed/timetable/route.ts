import type { z } from "zod";
import type { pathEntry } from "../../shared/timetable.ts";

type PathEntry = z.input<typeof pathEntry>;

/** The open line between neighbouring places; to go back along a single line is to read it from the end. */
const SINGLE: Readonly<Record<string, string>> = {
  "VENN PELL": "SL1 SL2",
  "PELL EAST": "SL3 SL4",
  "VENN LARK": "B1",
  "LARK MILL": "B2 B3",
  "MILL TOLV": "B4 B5",
};
const ONE_WAY: Readonly<Record<string, string>> = {
  "WEST HESP": "DW1 DW2",
  "HESP VENN": "DJ1 DJ2",
  "VENN HESP": "UJ1 UJ2",
  "HESP WEST": "UW1 UW2",
};

const PLACE_OF_ROADS: readonly (readonly [roads: RegExp, place: string])[] = [
  [/^W\d$/, "WEST"],
  [/^H/, "HESP"],
  [/^V\d$/, "VENN"],
  [/^P/, "PELL"],
  [/^E\d$/, "EAST"],
  [/^LM/, "LARK"],
  [/^M/, "MILL"],
  [/^T/, "TOLV"],
];

/**
 * The path of a working from its calls, west or junction end to far end or back: `W1/6:50 H1/6:54-6:56 V1/7:00
 * E1/7:09`. The first call has its departure, the last its arrival, one between both, or one time for a pass. Open
 * lines between neighbouring places are filled in; a place passed without a call is written without times: `P1`.
 */
export function toPath(calls: string): PathEntry[] {
  const tokens = calls.split(" ");
  let placeBefore: string | null = null;
  return tokens.flatMap((token, i) => {
    const [section = "", times = ""] = token.split("/");
    const place = placeOf(section);
    const between = placeBefore === null || placeBefore === place ? [] : openLine(placeBefore, place);
    placeBefore = place;
    const [arrive, depart] = toTimes(times, i === 0, i === tokens.length - 1);
    return [...between.map((line) => ({ section: line })), { section, arrive, depart }];
  });
}

function toTimes(times: string, first: boolean, last: boolean): [string | null, string | null] {
  if (times === "") return [null, null];
  if (first) return [null, times];
  if (last) return [times, null];
  const [arrive = times, depart = arrive] = times.split("-");
  return [arrive, depart];
}

function placeOf(section: string): string {
  const place = PLACE_OF_ROADS.find(([roads]) => roads.test(section))?.[1];
  if (place === undefined) throw new Error(`no place has a road ${section}`);
  return place;
}

function openLine(from: string, to: string): readonly string[] {
  const along = ONE_WAY[`${from} ${to}`] ?? SINGLE[`${from} ${to}`];
  if (along !== undefined) return along.split(" ");
  const back = SINGLE[`${to} ${from}`];
  if (back === undefined) throw new Error(`no line leads from ${from} to ${to}`);
  return back.split(" ").reverse();
}
