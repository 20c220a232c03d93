import type { AddressKind, FigureSource, HandsetKind, HandsetState } from "../../../shared/vocabulary.ts";
import { keepPicture } from "../roster/picture-service.ts";
import type { Field, TableKind } from "./fields.ts";
import { CODE, NAME, NOTE } from "./layout-tables.ts";

const SOURCES = ["measured", "leaflet", "rule of thumb"] as const satisfies readonly FigureSource[];
const ADDRESS_KINDS = ["short", "long"] as const satisfies readonly AddressKind[];
const HANDSET_KINDS = ["radio", "tethered", "fixed"] as const satisfies readonly HandsetKind[];
const HANDSET_STATES = ["ready", "faulty", "away"] as const satisfies readonly HandsetState[];

/** A current and where the figure comes from. */
const current = (path: string, label: string): Field[] => [
  { path: `${path}.ma`, label, holds: "whole", unit: "mA", least: 0, most: 100_000 },
  { path: `${path}.source`, label: "from", holds: "choice", options: SOURCES },
];
const LENGTH: Field = {
  path: "lengthMm",
  label: "Length",
  holds: "whole",
  unit: "mm",
  least: 1,
  most: 1_000_000,
};
const OWNER: Field = { path: "owner", label: "Whose", holds: "text", most: 120, isOptional: true };

export const ROSTER_TABLES: readonly TableKind[] = [
  {
    path: "locomotives",
    many: "locomotives",
    part: "roster",
    keep: "keep-roster",
    words: "locomotives",
    keepPicture: (club, code) => keepPicture(club, "locomotives", code),
    word: "locomotive",
    about: "What draws: each current with where its figure comes from.",
    fresh: {
      "running.source": "rule of thumb",
      "standing.source": "rule of thumb",
      "stall.source": "rule of thumb",
      "inrush.source": "rule of thumb",
    },
    fields: [
      CODE,
      NAME,
      LENGTH,
      ...current("running", "Running"),
      ...current("standing", "Standing"),
      ...current("stall", "Stalled"),
      ...current("inrush", "Inrush"),
      {
        path: "maxSpeedKmh",
        label: "Speed to",
        holds: "number",
        unit: "km/h",
        least: 0.1,
        most: 500,
        isOptional: true,
      },
      OWNER,
      NOTE,
    ],
  },
  {
    path: "decoders",
    many: "decoders",
    part: "roster",
    keep: "keep-roster",
    words: "decoders",
    word: "decoder",
    about: "What a locomotive answers by. One without a decoder runs on analog track only.",
    fresh: { addressKind: "short", address: "3" },
    fields: [
      CODE,
      { path: "locomotive", label: "In locomotive", holds: "one", of: "locomotives", isOptional: true },
      { path: "addressKind", label: "Address is", holds: "choice", options: ADDRESS_KINDS },
      { path: "address", label: "Address", holds: "whole", unit: "", least: 1, most: 10_239 },
      { path: "analogAllowed", label: "May run analog", holds: "yes" },
      NOTE,
    ],
  },
  {
    path: "rakes",
    many: "rakes",
    part: "roster",
    keep: "keep-roster",
    words: "rakes",
    keepPicture: (club, code) => keepPicture(club, "rakes", code),
    word: "rake",
    about: "Coaches or wagons that stay together.",
    fresh: {
      vehicles: "1",
      "lighting.ma": "0",
      "lighting.source": "rule of thumb",
      "inrush.ma": "0",
      "inrush.source": "rule of thumb",
    },
    fields: [
      CODE,
      NAME,
      LENGTH,
      { path: "vehicles", label: "Vehicles", holds: "whole", unit: "", least: 1, most: 200 },
      ...current("lighting", "Lights"),
      ...current("inrush", "Inrush"),
      OWNER,
      NOTE,
    ],
  },
];

export const HANDSET_TABLES: readonly TableKind[] = [
  {
    path: "handsets",
    many: "handsets",
    part: null,
    keep: "keep-roster",
    words: "handsets",
    word: "handset",
    about: "What drivers hold: where it can be used, how long it lasts, whose it is.",
    fresh: { kind: "radio", state: "ready" },
    fields: [
      CODE,
      NAME,
      { path: "commandSystem", label: "Command system", holds: "one", of: "command-systems" },
      { path: "kind", label: "Kind", holds: "choice", options: HANDSET_KINDS },
      {
        path: "places",
        label: "Usable at",
        holds: "many",
        of: "places",
        isOptional: true,
        hint: "Empty for radio: everywhere.",
      },
      {
        path: "batteryMinutes",
        label: "Battery",
        holds: "whole",
        unit: "min",
        least: 1,
        most: 10_000,
        isOptional: true,
      },
      { path: "state", label: "State", holds: "choice", options: HANDSET_STATES },
      OWNER,
      NOTE,
    ],
  },
];
