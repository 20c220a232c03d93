import { z } from "zod";
import { type Handset, handset } from "../../../shared/handsets.ts";
import { LIMITS } from "../../../shared/limits.ts";
import { code } from "../../../shared/units.ts";
import { HANDSET_STATES } from "../../../shared/vocabulary.ts";
import { handsetTable } from "../../database/records/handsets.ts";
import { findRepeated } from "../../records/flaws.ts";
import type { RecordKind, Reference } from "../../records/record-kind.ts";
import { placeNamedTwice } from "./errors.ts";

export const handsetKind: RecordKind<Handset> = {
  one: "handset",
  many: "handsets",
  about: "A handset is what a driver holds: it serves one command system and is usable at some places.",
  schema: handset,
  example: {
    code: "H2",
    name: "Handset two",
    commandSystem: "blue",
    kind: "tethered",
    places: ["west"],
  },
  table: handsetTable,
  keep: "keep-roster",
  most: LIMITS.handsets,
  filters: {
    commandSystem: {
      schema: code.meta({ description: "Only those of this command system." }),
      where: (commandSystemCode: string) => ({ commandSystemCode }),
    },
    state: {
      schema: z.enum(HANDSET_STATES).meta({ description: "Only those in this state." }),
      where: (state: string) => ({ state }),
    },
  },
  references: (body) => [
    { to: "commandSystem", code: body.commandSystem, path: ["commandSystem"] },
    ...body.places.map((place, at): Reference => ({ to: "place", code: place, path: ["places", at] })),
  ],
  flaws: (body) =>
    findRepeated(body.places).map(({ at, entry }) => ({
      path: ["places", at],
      detail: placeNamedTwice(entry),
    })),
};
