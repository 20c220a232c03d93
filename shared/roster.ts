import { z } from "zod";
import { code, currentMa, lengthMm, name, note, speedKmh } from "./units.ts";
import { ADDRESS_KINDS, FIGURE_SOURCES } from "./vocabulary.ts";

/** A current and where the figure came from. */
export const currentFigure = z
  .strictObject({
    ma: currentMa,
    source: z.enum(FIGURE_SOURCES).meta({ description: "Where the figure comes from, surest first." }),
  })
  .meta({ id: "CurrentFigure" });

export const locomotive = z
  .strictObject({
    code,
    name,
    lengthMm,
    running: currentFigure.meta({ description: "Drawn while its train moves." }),
    standing: currentFigure.meta({ description: "Drawn while it stands on digital track: sound, lights." }),
    stall: currentFigure.meta({ description: "Drawn with its wheels held." }),
    inrush: currentFigure.meta({
      description:
        "Drawn for an instant when track power returns; taken to be no less than what is drawn from then on.",
    }),
    maxSpeedKmh: speedKmh
      .nullable()
      .default(null)
      .meta({ description: "Highest prototype speed in km/h; none: no limit." }),
    owner: z.string().max(120).default("").meta({ description: "Whose it is; empty for the club's own." }),
    note,
  })
  .meta({ id: "Locomotive" });

/** A decoder and the locomotive it sits in. A locomotive without one is analog-only. */
export const decoder = z
  .strictObject({
    code,
    locomotive: code.nullable().default(null),
    addressKind: z
      .enum(ADDRESS_KINDS)
      .meta({ description: "Short addresses are 1 to 127, long ones 128 to 10239." }),
    address: z.int().min(1).max(10_239).meta({ description: "The address it answers to." }),
    analogAllowed: z.boolean().default(false).meta({
      description: "May run on analog track: bit 2 of CV29, NMRA S-9.2.2.",
    }),
    note,
  })
  .check((ctx) => {
    const { addressKind, address } = ctx.value;
    const fits = addressKind === "short" ? address <= 127 : address >= 128;
    if (!fits)
      ctx.issues.push({
        code: "custom",
        path: ["address"],
        input: address,
        message: "A short address is 1 to 127, a long one 128 to 10239: change the number or the kind.",
      });
  })
  .meta({ id: "Decoder" });

/** Coaches or wagons that stay together. */
export const rake = z
  .strictObject({
    code,
    name,
    lengthMm,
    vehicles: z.int().min(1).max(200).default(1).meta({ description: "How many coaches or wagons." }),
    lighting: currentFigure
      .default({ ma: 0, source: "rule of thumb" })
      .meta({ description: "Drawn all the time on live track." }),
    inrush: currentFigure.default({ ma: 0, source: "rule of thumb" }).meta({
      description:
        "Drawn for an instant when track power returns; taken to be no less than what is drawn from then on.",
    }),
    owner: z.string().max(120).default("").meta({ description: "Whose it is; empty for the club's own." }),
    note,
  })
  .meta({ id: "Rake" });

export type CurrentFigure = z.output<typeof currentFigure>;
export type Locomotive = z.output<typeof locomotive>;
export type Decoder = z.output<typeof decoder>;
export type Rake = z.output<typeof rake>;
