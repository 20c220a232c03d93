import type { Wiring } from "../../../shared/layout.ts";
import type { Conductor, SectionUse, SectionWiring, Sharing } from "../../../shared/vocabulary.ts";
import type { Field, RecordDraft, TableKind } from "./fields.ts";
import { OUTPUTS, STOPS } from "./list-forms.ts";

// said again, since the lists of shared/ would bring its schemas to every phone; `satisfies` keeps them true
const WIRINGS = ["digital", "analog", "both"] as const satisfies readonly SectionWiring[];
const SHARINGS = ["one-train", "shared"] as const satisfies readonly Sharing[];
const USES = [
  "line",
  "platform road",
  "loop",
  "siding",
  "staging road",
  "yard",
] as const satisfies readonly SectionUse[];
const CONDUCTORS = [
  "0.5 mm2 solid",
  "0.5 mm2 flexible",
  "0.75 mm2 solid",
  "0.75 mm2 flexible",
  "1 mm2 solid",
  "1 mm2 flexible",
  "1.5 mm2 solid",
  "1.5 mm2 flexible",
  "2.5 mm2 solid",
  "2.5 mm2 flexible",
  "4 mm2 solid",
  "4 mm2 flexible",
  "AWG 24",
  "AWG 22",
  "AWG 20",
  "AWG 18",
  "AWG 16",
  "AWG 14",
  "AWG 12",
  "AWG 10",
] as const satisfies readonly Conductor[];

export const CODE: Field = { path: "code", label: "Code", holds: "code" };
export const NAME: Field = { path: "name", label: "Name", holds: "text", most: 120 };
export const NOTE: Field = { path: "note", label: "Note", holds: "text", most: 2_000, isOptional: true };

const mm = (path: string, label: string): Field => ({
  path,
  label,
  holds: "whole",
  unit: "mm",
  least: 1,
  most: 1_000_000,
});
const ma = (path: string, label: string, least = 1): Field => ({
  path,
  label,
  holds: "whole",
  unit: "mA",
  least,
  most: 100_000,
});
const spot = (path: string, label: string): Field => ({
  path,
  label,
  holds: "whole",
  unit: "mm",
  least: -1_000_000,
  most: 1_000_000,
  isOptional: true,
});

/** The railway's records, in the order in which a new railway is written down. */
export const LAYOUT_TABLES: readonly TableKind[] = [
  {
    path: "areas",
    many: "areas",
    part: "layout",
    words: "areas",
    word: "area",
    about: "A part of the railway that a night runs analog or digital as one.",
    fields: [CODE, NAME, NOTE],
  },
  {
    path: "places",
    many: "places",
    part: "layout",
    words: "places",
    word: "place",
    about:
      "A timing point: a station, junction or staging yard. Where it is in the room decides how long one walks.",
    fields: [CODE, NAME, spot("xMm", "Across"), spot("yMm", "Along"), NOTE],
  },
  {
    path: "command-systems",
    many: "commandSystems",
    part: "layout",
    words: "command systems",
    word: "command system",
    about: "A digital system that handsets belong to.",
    fresh: { shortAddressMost: "127", longAddressMost: "10239" },
    fields: [
      CODE,
      NAME,
      {
        path: "mostHandsets",
        label: "Most handsets",
        holds: "whole",
        unit: "",
        least: 1,
        most: 10_000,
        isOptional: true,
      },
      {
        path: "mostAddresses",
        label: "Most addresses",
        holds: "whole",
        unit: "",
        least: 1,
        most: 10_240,
        isOptional: true,
      },
      {
        path: "shortAddressMost",
        label: "Short addresses to",
        holds: "whole",
        unit: "",
        least: 1,
        most: 127,
      },
      {
        path: "longAddressMost",
        label: "Long addresses to",
        holds: "whole",
        unit: "",
        least: 128,
        most: 10_239,
      },
      NOTE,
    ],
  },
  {
    path: "supplies",
    many: "supplies",
    part: "layout",
    words: "supplies",
    word: "supply",
    about: "A digital supply, or booster: the districts it feeds share its rating.",
    fresh: { accessoryMa: "0", volts: "16", sourceOhm: "0.1" },
    fields: [
      CODE,
      NAME,
      { path: "commandSystem", label: "Command system", holds: "one", of: "command-systems" },
      ma("ratingMa", "Rating"),
      ma("accessoryMa", "Accessories", 0),
      { path: "volts", label: "Track volts", holds: "number", unit: "V", least: 0.1, most: 33 },
      { path: "sourceOhm", label: "Own resistance", holds: "number", unit: "Ω", least: 0, most: 10 },
      NOTE,
    ],
  },
  {
    path: "districts",
    many: "districts",
    part: "layout",
    words: "power districts",
    word: "power district",
    about: "The sections behind one circuit breaker, and the wires to the farthest of them.",
    fresh: { tripDelayMs: "100" },
    fields: [
      CODE,
      NAME,
      { path: "supply", label: "Supply", holds: "one", of: "supplies" },
      ma("breakerMa", "Breaker opens at"),
      { path: "tripDelayMs", label: "after", holds: "whole", unit: "ms", least: 0, most: 60_000 },
      {
        path: "wiring.conductor",
        label: "Conductor",
        holds: "choice",
        options: CONDUCTORS,
        isOptional: true,
      },
      { ...mm("wiring.lengthMm", "Run, one way"), isOptional: true },
      {
        path: "wiring.temperatureC",
        label: "At",
        holds: "number",
        unit: "°C",
        least: -40,
        most: 90,
        isOptional: true,
      },
      NOTE,
    ],
    complete: wholeWiring,
  },
  {
    path: "sections",
    many: "sections",
    part: "layout",
    words: "sections",
    word: "section",
    about: "A length of track that is fed, occupied and passed as one.",
    fresh: { use: "line", wiring: "digital", sharing: "one-train" },
    fields: [
      CODE,
      NAME,
      { path: "area", label: "Area", holds: "one", of: "areas" },
      { path: "place", label: "Place", holds: "one", of: "places", isOptional: true },
      { path: "use", label: "Use", holds: "choice", options: USES },
      mm("lengthMm", "Length"),
      { path: "wiring", label: "Wired", holds: "choice", options: WIRINGS },
      { path: "district", label: "District", holds: "one", of: "districts", isOptional: true },
      { path: "sharing", label: "Trains", holds: "choice", options: SHARINGS },
      {
        path: "maxSpeedKmh",
        label: "Speed to",
        holds: "number",
        unit: "km/h",
        least: 0.1,
        most: 500,
        isOptional: true,
      },
      { path: "changeover", label: "Changeover", holds: "yes" },
      { path: "returnLoop", label: "Return loop", holds: "yes" },
      { path: "mustClear", label: "Must clear", holds: "yes" },
      { path: "handStaging", label: "Staged by hand", holds: "yes" },
      NOTE,
    ],
  },
  {
    path: "links",
    many: "links",
    part: "layout",
    words: "links",
    word: "link",
    about: "Two sections that join, so that a train passes from one to the other.",
    fields: [
      CODE,
      { path: "from", label: "From", holds: "one", of: "sections" },
      { path: "to", label: "To", holds: "one", of: "sections" },
      { path: "oneWay", label: "One way", holds: "yes" },
      NOTE,
    ],
  },
  {
    path: "controllers",
    many: "controllers",
    part: "layout",
    words: "controllers",
    word: "controller",
    about: "An analog controller; its outputs share its transformer.",
    fresh: { accessoryMa: "0" },
    fields: [
      CODE,
      NAME,
      { path: "place", label: "Place", holds: "one", of: "places", isOptional: true },
      ma("transformerMa", "Transformer"),
      ma("accessoryMa", "Accessories", 0),
      { path: "outputs", label: "Outputs", holds: "list", list: OUTPUTS, hint: OUTPUTS.example },
      NOTE,
    ],
  },
  {
    path: "selectors",
    many: "selectors",
    part: "layout",
    words: "selectors",
    word: "selector",
    about: "The switch that feeds one analog section from one of several outputs, or from none.",
    fields: [
      CODE,
      { path: "section", label: "Section", holds: "one", of: "sections" },
      { path: "outputs", label: "Outputs", holds: "many", of: "outputs" },
      NOTE,
    ],
  },
  {
    path: "lines",
    many: "lines",
    part: "layout",
    words: "lines",
    word: "line",
    about: "The places along one line: the upright axis of a train graph.",
    fields: [
      CODE,
      NAME,
      { path: "stops", label: "Places", holds: "list", list: STOPS, hint: STOPS.example },
      NOTE,
    ],
  },
  {
    path: "walks",
    many: "walks",
    part: "layout",
    words: "walks",
    word: "walk",
    about: "How long one walks from one place to another, as somebody measured it.",
    fields: [
      CODE,
      { path: "from", label: "From", holds: "one", of: "places" },
      { path: "to", label: "To", holds: "one", of: "places" },
      { path: "seconds", label: "Takes", holds: "whole", unit: "s", least: 0, most: 86_400 },
      NOTE,
    ],
  },
];

/** Wires are known whole or not at all; 20 °C where nobody says. */
function wholeWiring(record: RecordDraft): RecordDraft {
  const { conductor, lengthMm, temperatureC } = (record.wiring ?? {}) as Partial<Wiring>;
  const isKnown = conductor != null || lengthMm != null;
  return { ...record, wiring: isKnown ? { conductor, lengthMm, temperatureC: temperatureC ?? 20 } : null };
}
