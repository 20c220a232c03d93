import type { TrailKind } from "../../../shared/trail.ts";

/** What each kind is called on the pages, in the order in which people look for them. */
const WORDS = {
  session: "night",
  booking: "booking",
  claim: "claim",
  duty: "duty",
  queue: "place in a queue",
  swap: "swap",
  attendee: "person attending",
  member: "member",
  membership: "account",
  handset: "handset",
  timetable: "timetable",
  "timetable-version": "timetable version",
  train: "train",
  locomotive: "locomotive",
  decoder: "decoder",
  rake: "rake",
  "locomotive-picture": "picture of a locomotive",
  "rake-picture": "picture of a rake",
  area: "area",
  place: "place",
  walk: "walk",
  line: "line",
  section: "section",
  link: "link",
  "command-system": "command system",
  supply: "supply",
  district: "district",
  controller: "controller",
  selector: "selector",
  "short-test": "short test",
  reading: "reading",
  clock: "layout clock",
  attendance: "booking on",
  "handset-desk": "handset desk",
  "train-state": "train on the night",
  replacement: "replacement of a locomotive",
  trip: "trip",
  club: "club",
} as const satisfies Record<TrailKind, string>;

export const KINDS = Object.keys(WORDS) as readonly TrailKind[];

export const kindWords = (kind: TrailKind): string => WORDS[kind];
