import { z } from "zod";
import { span } from "./check.ts";
import { code, layoutReading } from "./units.ts";

const ms = z.int().meta({ description: "Milliseconds of real time since the slot's start." });

const position = code.nullable().meta({ description: "The output that it feeds from; null: off." });

/** One change of a selector's position. */
export const selectorTurn = z
  .strictObject({
    section: code,
    from: position,
    to: position,
    train: code.meta({ description: "Whom it is for: who runs next, or who stands there." }),
    reason: z.enum(["runs", "stands", "digital"]).meta({
      description:
        "`runs`: the train is about to run there. `stands`: it stands there, and parked stock stands in sections switched off. `digital`: the section is changed over.",
    }),
    mayFromMs: ms.meta({
      description:
        "From here to `mayToMs` the turn may be made, all else as it is, and nothing that runs is fed wrongly.",
    }),
    mayToMs: ms,
    mayFrom: layoutReading,
    mayTo: layoutReading,
  })
  .meta({ id: "SelectorTurn" });

const moment = z.strictObject({
  atMs: ms,
  at: layoutReading,
  startsAt: z.iso.datetime({ offset: true }).nullable().meta({ description: "Real time." }),
  mayFrom: layoutReading.meta({ description: "All its turns may be made from here to `mayTo`." }),
  mayTo: layoutReading,
  turns: z.array(selectorTurn),
});

const band = z.strictObject({ output: code, fromMs: ms, toMs: ms, from: layoutReading, to: layoutReading });

/** When to turn which selector of the analog panel. */
export const selectorSchedule = z
  .strictObject({
    status: z.enum(["made", "no-analog", "no-assignment", "not-decided", "plan-stopped"]).meta({
      description:
        "`no-analog`: nothing runs on analog track. `no-assignment`: the outputs do not suffice, proven. `not-decided`: whether they do was not found out. `plan-stopped`: the plan wants of the track what no panel can give. All but the first have no turns; `reasons` say why.",
    }),
    headline: z.string(),
    slot: span,
    clockRatio: z.number().meta({ description: "Layout time = real time × this ratio." }),
    turns: z.int().meta({ description: "How often a selector changes its position, from all off." }),
    turnsAtLeast: z.int().meta({ description: "No assignment of outputs to these trains has fewer." }),
    proven: z.boolean().meta({ description: "Whether the two are one." }),
    selectors: z.int().meta({ description: "How many selectors are turned at all." }),
    outputs: z.array(z.strictObject({ code, name: z.string(), controller: code })),
    moments: z.array(moment).meta({ description: "By time: what is turned together." }),
    sections: z
      .array(z.strictObject({ code, name: z.string(), turns: z.int(), bands: z.array(band) }))
      .meta({ description: "By section: when its selector stands at which output; off in between." }),
    reasons: z.array(z.strictObject({ sentence: z.string(), cure: z.string() })),
  })
  .meta({ id: "SelectorSchedule" });

export type SelectorTurn = z.infer<typeof selectorTurn>;
export type SelectorSchedule = z.infer<typeof selectorSchedule>;
