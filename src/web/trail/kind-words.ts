import { fieldWords } from "./differences.ts";

/** Kinds of what a club keeps, in the order in which people look for them. */
export const TRAIL_KINDS = [
  "session",
  "booking",
  "claim",
  "duty",
  "queue",
  "swap",
  "member",
  "handset",
  "timetable",
  "train",
  "locomotive",
  "decoder",
  "rake",
  "area",
  "place",
  "line",
  "section",
  "link",
  "commandSystem",
  "supply",
  "district",
  "controller",
  "selector",
  "clock",
  "attendance",
  "handset-desk",
  "train-state",
  "replacement",
  "trip",
  "club",
] as const;

const WORDS: Readonly<Record<string, string>> = {
  session: "night",
  queue: "place in a queue",
  clock: "layout clock",
  attendance: "booking on",
  "train-state": "train on the night",
  replacement: "replacement of a locomotive",
};

/** What a kind is called on the pages. */
export const kindWords = (kind: string) => WORDS[kind] ?? fieldWords(kind);
