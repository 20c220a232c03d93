import { z } from "zod";
import { code, name, note } from "./units.ts";
import { HANDSET_KINDS, HANDSET_STATES } from "./vocabulary.ts";

export const handset = z
  .strictObject({
    code,
    name,
    commandSystem: code.meta({ description: "The command system it drives trains of." }),
    kind: z.enum(HANDSET_KINDS).meta({ description: "Plugged in, by radio, or mounted on one panel." }),
    places: z.array(code).max(500).default([]).meta({
      description: "Where it can be used: near its sockets, or its one panel. Empty for radio: everywhere.",
    }),
    batteryMinutes: z.int().min(1).max(10_000).nullable().default(null).meta({
      description: "Real minutes a charge lasts; none for one fed by its cable.",
    }),
    state: z
      .enum(HANDSET_STATES)
      .default("ready")
      .meta({ description: "Only those that are ready count as stock." }),
    owner: z.string().max(120).default("").meta({ description: "Whose it is; empty for the club's own." }),
    note,
  })
  .meta({ id: "Handset" });

export type Handset = z.output<typeof handset>;
