import { z } from "zod";
import { decoder, locomotive } from "./roster.ts";
import { importResult } from "./transfer.ts";
import { code } from "./units.ts";
import { FIGURE_SOURCES } from "./vocabulary.ts";

export const LENGTH_UNITS = ["mm", "cm", "m", "in"] as const;
export const CURRENT_UNITS = ["mA", "A"] as const;
export const SPEED_UNITS = ["km/h", "mph"] as const;

const column = z.string().min(1).max(200).nullable().meta({
  description: "Heading of the column it stands in; none: it has no column.",
});

const unitColumn = column.optional().meta({
  description: "Heading of the column that names each row's unit, where the sheet has one; blank: `unit`.",
});

const currentColumn = z
  .strictObject({
    column,
    unit: z.enum(CURRENT_UNITS).meta({ description: "Of a cell that names none itself." }),
    unitColumn,
    constantMa: z.int().min(0).max(100_000).nullable().meta({
      description:
        "For a blank cell, or where there is no column, of a locomotive that is new; none: it must be there.",
    }),
    source: z.enum(FIGURE_SOURCES).meta({
      description:
        "Where the column's figures come from. They never take the place of figures from a surer source.",
    }),
  })
  .meta({ id: "CurrentColumn" });

/** Which column of somebody's spreadsheet holds what of a locomotive. */
export const rosterMapping = z
  .strictObject({
    code: z.string().min(1).max(200).meta({ description: "Heading of the column with its number." }),
    name: column,
    length: z
      .strictObject({
        column,
        unit: z.enum(LENGTH_UNITS).meta({ description: "Of a cell that names none itself." }),
        unitColumn,
        constantMm: z.int().min(1).max(1_000_000).nullable().meta({
          description: "For a blank cell, or where there is no column, of a locomotive that is new.",
        }),
      })
      .meta({ id: "LengthColumn" }),
    running: currentColumn,
    standing: currentColumn,
    stall: currentColumn,
    inrush: currentColumn,
    maxSpeed: z
      .strictObject({
        column,
        unit: z.enum(SPEED_UNITS).meta({ description: "Of a cell that names none itself." }),
        unitColumn,
      })
      .meta({ id: "SpeedColumn" }),
    address: column.meta({
      description:
        "Decoder address: 1 to 127 is short, above long; `S 3` or `3 L` says which. Blank: it has no decoder.",
    }),
    owner: column,
    note: column,
  })
  .meta({ id: "RosterMapping" });

const text = z.string().min(1).max(4_000_000).meta({ description: "The sheet as CSV, its heading first." });

export const rosterSheet = z.strictObject({ text }).meta({ id: "RosterSheet" });

export const suggestedMapping = z
  .strictObject({
    headings: z.array(z.string()),
    rows: z.int().meta({ description: "How many rows there are under the heading." }),
    samples: z.array(z.array(z.string())).meta({ description: "The first of them." }),
    mapping: rosterMapping.nullable().meta({
      description: "What the headings and cells look like; none where no column can be the number.",
    }),
  })
  .meta({ id: "SuggestedMapping" });

export const mappedImport = z
  .strictObject({
    text,
    mapping: rosterMapping,
    dryRun: z.boolean().meta({ description: "True: everything is tried, and nothing kept." }),
  })
  .meta({ id: "MappedImport" });

const keptFigure = z
  .strictObject({
    row: z.int().meta({ description: "Where the sheet says otherwise; its heading is row 1." }),
    column: z.string(),
    locomotive: code,
    figure: z
      .enum(["running", "standing", "stall", "inrush"])
      .meta({ description: "Which of its currents stays." }),
    sentence: z.string().meta({ description: "What stays, and why." }),
  })
  .meta({ id: "KeptFigure" });

export const mappedResult = z
  .strictObject({
    ...importResult.shape,
    locomotives: z
      .array(locomotive)
      .meta({ description: "The first of them as they are, or would be, kept." }),
    decoders: z.array(decoder),
    kept: z.array(keptFigure).meta({
      description:
        "Figures of the roster that stay although the sheet has others, for they are from a surer source.",
    }),
  })
  .meta({ id: "MappedResult" });

export type RosterMapping = z.output<typeof rosterMapping>;
export type SuggestedMapping = z.output<typeof suggestedMapping>;
export type MappedResult = z.output<typeof mappedResult>;
export type KeptFigure = z.output<typeof keptFigure>;
