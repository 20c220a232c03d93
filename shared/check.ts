import { z } from "zod";
import { code, layoutReading } from "./units.ts";
import { CONTROLS, FINDING_CODES, SEVERITIES } from "./vocabulary.ts";

const ms = z.int().meta({ description: "Milliseconds of real time since the slot's start." });

/** A stretch of the session on both clocks; half-open. */
export const span = z
  .strictObject({
    startMs: ms,
    endMs: ms,
    layoutStart: layoutReading,
    layoutEnd: layoutReading,
    startsAt: z.iso
      .datetime({ offset: true })
      .nullable()
      .meta({ description: "Real time; none for a plan without a date." }),
    endsAt: z.iso.datetime({ offset: true }).nullable(),
  })
  .meta({ id: "Span" });

export const share = z
  .strictObject({ train: code, ma: z.int().meta({ description: "What it draws at the peak." }) })
  .meta({ id: "Share" });

export const finding = z
  .strictObject({
    code: z.enum(FINDING_CODES).meta({ description: "Stable name of what is wrong." }),
    severity: z
      .enum(SEVERITIES)
      .meta({ description: "`stops`: the session cannot run so. `warns`: it can, with little to spare." }),
    sentence: z.string().meta({ description: "What is wrong, in one sentence a club member understands." }),
    cure: z.string().meta({ description: "What would cure it." }),
    span,
    atMs: ms.meta({ description: "The moment to look at: the peak of a load, else the start of the span." }),
    trains: z.array(code).meta({ description: "Every train in it; so the lists that follow." }),
    sections: z.array(code),
    districts: z.array(code),
    supplies: z.array(code),
    outputs: z.array(code),
    controllers: z.array(code),
    commandSystems: z.array(code),
    locomotives: z.array(code),
    rakes: z.array(code),
    members: z.array(code),
    handsets: z.array(code),
    measured: z
      .number()
      .nullable()
      .meta({ description: "The figure found, in `unit`; none where nothing is counted." }),
    limit: z.number().nullable().meta({ description: "What it may be at most, in `unit`." }),
    unit: z
      .enum([
        "trains",
        "mm",
        "km/h",
        "mA",
        "handsets",
        "outputs",
        "ms",
        "address",
        "addresses",
        "share",
        "V",
        "none",
      ])
      .meta({ description: "What `measured` and `limit` count." }),
    overSeconds: z.number().nullable().meta({ description: "Loads: real seconds above the limit." }),
    shares: z.array(share).meta({ description: "Loads: who makes up the peak." }),
    pathEntry: z.int().nullable().meta({ description: "Path faults: position in the train's path, from 0." }),
    needed: z.int().nullable().meta({
      description:
        "outputs-too-few: how many more, reaching `sections`, would serve; district-trips-on-restart: in how many groups the breaker bears it, none where in no order.",
    }),
  })
  .meta({ id: "Finding" });

const curve = z
  .array(z.tuple([ms, z.int()]))
  .meta({ description: "Steps [from, value]; each holds until the next." });

export const stallReport = z
  .strictObject({
    ma: z.int().meta({ description: "The load with that locomotive stalled." }),
    atMs: ms,
    atLayout: layoutReading,
    locomotive: code,
    train: code,
  })
  .meta({ id: "StallReport" });

export const restartReport = z
  .strictObject({
    inrushMa: z.int().meta({
      description: "Inrush of all that is in it then, together; of each no less than it draws from then on.",
    }),
    atMs: ms,
    atLayout: layoutReading,
    trains: z.array(code).meta({ description: "Those in it then." }),
    holds: z.boolean().meta({
      description:
        "The breaker holds in: the inrush is within it, or over before it opens and what is drawn from then on within it.",
    }),
    isWithin: z.boolean().meta({ description: "The inrush is within the breaker." }),
    groups: z.array(z.array(code)).nullable().meta({
      description:
        "In which groups of trains to bring it up, in order; none where the breaker bears no order.",
    }),
    proven: z
      .boolean()
      .meta({ description: "No order has fewer groups; where there are none, no order exists." }),
    tooBig: z.array(code).meta({ description: "Trains that the breaker does not bear even alone." }),
  })
  .meta({ id: "RestartReport" });

export const loadReport = z
  .strictObject({
    code,
    name: z.string(),
    limitMa: z.int().meta({ description: "Breaker or rating." }),
    reserveMa: z.number().meta({ description: "The limit less the reserve: above it, too close." }),
    peakMa: z.int().meta({ description: "The most drawn at once, accessories included." }),
    peakAtMs: ms,
    peakLayout: layoutReading,
    lowMa: z.int().meta({ description: "The peak with every current as low as it may be." }),
    highMa: z.int().meta({ description: "The peak with every current as high as it may be." }),
    measuredMa: z
      .int()
      .meta({ description: "Of what trains draw at the peak, that by figures somebody measured." }),
    assumedMa: z.int().meta({ description: "The rest of it: leaflets and rules of thumb." }),
    constantMa: z.int().meta({ description: "Accessories, drawn all the time." }),
    overLimitSeconds: z.number().meta({ description: "Real seconds above `limitMa`." }),
    overReserveSeconds: z.number().meta({ description: "Real seconds above `reserveMa`." }),
    shares: z.array(share).meta({ description: "Who makes up the peak, without the accessories." }),
    curve,
    stall: stallReport.nullable().meta({
      description:
        "Districts and outputs: one locomotive stalls, at worst. None where no locomotive is ever on it.",
    }),
    restart: restartReport.nullable().meta({
      description: "Districts: power returns after a trip, at worst. None where nothing is ever in it.",
    }),
  })
  .meta({ id: "LoadReport" });

export const needReport = z
  .strictObject({
    code,
    name: z.string(),
    stock: z.int().meta({ description: "How many there are." }),
    peak: z.int().meta({ description: "The most needed at once." }),
    peakAtMs: ms,
    peakLayout: layoutReading,
    trains: z.array(code).meta({ description: "The trains that need one at the peak." }),
    overSeconds: z
      .number()
      .meta({ description: "Real seconds during which more are needed than there are." }),
    curve,
  })
  .meta({ id: "NeedReport" });

const handsetSharing = z
  .strictObject({
    status: z.enum(["shared", "impossible", "not-decided", "not-listed"]).meta({
      description:
        "`shared`: the turns serve every train. `impossible`: proven that no sharing does. `not-decided`: too many ways to try. `not-listed`: only the number of handsets is known.",
    }),
    turns: z
      .array(
        z.strictObject({
          train: code,
          span,
          handset: code,
          isClaimed: z.boolean().meta({ description: "Whether somebody has it for this train already." }),
        }),
      )
      .meta({ description: "From pick-up to hand-in, in order of train." }),
  })
  .meta({ id: "HandsetSharing" });

const handsetReport = needReport.extend({ sharing: handsetSharing }).meta({ id: "HandsetReport" });

export const occupationReport = z
  .strictObject({
    section: code,
    train: code,
    pathEntry: z.int().meta({ description: "Position in the train's path, from 0." }),
    enterMs: ms
      .nullable()
      .meta({ description: "When its head enters; null: it stands there from the start." }),
    clearMs: ms.nullable().meta({ description: "When its tail is clear; null: it stands there at the end." }),
    blockedFromMs: ms.meta({
      description: "From here on the section is taken: set-up time before it enters.",
    }),
    blockedToMs: ms.meta({ description: "Until here: release time after it is clear." }),
  })
  .meta({ id: "Occupation" });

export const analogRun = z
  .strictObject({
    train: code,
    span,
    sections: z.array(z.strictObject({ section: code, fromMs: ms, toMs: ms })),
    candidates: z.array(code).meta({ description: "Outputs that reach all its sections." }),
    runningMa: z.int().meta({ description: "What its locomotives and lit coaches draw while it moves." }),
    output: code.nullable().meta({ description: "The output it gets; null where none is left." }),
  })
  .meta({ id: "AnalogRun" });

/** One train on one line of the graph: where its head is, in mm from the line's zero, at each bend. */
export const graphTrain = z
  .strictObject({
    train: code,
    points: z.array(z.tuple([ms, z.number()])),
  })
  .meta({ id: "GraphTrain" });

export const graphLine = z
  .strictObject({
    line: code,
    name: z.string(),
    stops: z.array(z.strictObject({ place: code, name: z.string(), atMm: z.int() })),
    trains: z.array(graphTrain),
  })
  .meta({ id: "GraphLine" });

export const checkReport = z
  .strictObject({
    verdict: z
      .enum(["runs", "stopped"])
      .meta({ description: "`stopped`: at least one finding stops the session." }),
    headline: z.string().meta({ description: "The answer in a sentence." }),
    stops: z.int().meta({ description: "How many findings stop the session." }),
    warnings: z.int().meta({ description: "How many warn." }),
    slot: span,
    clockRatio: z.number().meta({ description: "Layout time = real time × this ratio." }),
    findings: z.array(finding),
    findingsLeftOut: z.int().meta({ description: "Findings beyond the most that are listed." }),
    complete: z.boolean().meta({
      description:
        "False where there were more clashes than a check follows: then more is wrong than was counted.",
    }),
    trains: z.array(
      z.strictObject({
        code,
        name: z.string(),
        lengthMm: z.int(),
        departs: layoutReading,
        arrives: layoutReading,
      }),
    ),
    trainsNotInSlot: z
      .array(code)
      .meta({ description: "Trains of the timetable that depart outside the slot." }),
    sections: z.array(
      z.strictObject({
        code,
        name: z.string(),
        control: z
          .enum([...CONTROLS, "changeover", "dead"])
          .meta({ description: "How it runs in this slot; dead: it is not wired for what its area runs." }),
      }),
    ),
    occupations: z
      .array(occupationReport)
      .meta({ description: "Every stretch for which a train takes a section." }),
    graph: z.array(graphLine).meta({ description: "Trains along each line, for a train graph." }),
    districts: z.array(loadReport),
    supplies: z.array(loadReport),
    outputs: z.array(loadReport),
    controllers: z.array(loadReport),
    handsets: z.array(handsetReport).meta({ description: "One a command system." }),
    outputNeed: needReport.meta({ description: "Controller outputs of the whole railway." }),
    capacity: z
      .array(
        z
          .strictObject({
            section: code,
            trains: z.int().meta({
              description: "How often a train is in it on its way; named twice in a row by a path it is one.",
            }),
            busySeconds: z.number().meta({
              description: "Real seconds it is taken, its trains pushed together until they touch.",
            }),
            share: z.number().meta({ description: "Of the slot, 0 to 1 and more." }),
            additional: z.number().nullable().meta({
              description: "How much more of the same would still go in: 1 / share − 1 (UIC Code 406).",
            }),
          })
          .meta({ id: "BusySection" }),
      )
      .meta({ description: "Sections that trains use." }),
    pushedTogether: z
      .strictObject({
        seconds: z.number(),
        share: z.number().meta({ description: "Of the slot, 0 to 1 and more." }),
      })
      .meta({
        description:
          "How long all trains would take, each as early as those before it on its way let it (UIC Code 406).",
      }),
    analog: z.strictObject({
      status: z.enum(["assigned", "impossible", "not-decided"]).meta({
        description:
          "Every run has its output; no assignment serves all (see `core`); neither was found within the limit of the search.",
      }),
      runs: z.array(analogRun),
      core: z.array(z.int()).meta({
        description:
          "Where impossible, the proof: runs (by position) that no assignment serves together, none to spare.",
      }),
    }),
  })
  .meta({ id: "CheckReport" });

export type Span = z.output<typeof span>;
export type FindingReport = z.output<typeof finding>;
export type LoadReport = z.output<typeof loadReport>;
export type HandsetSharingReport = z.output<typeof handsetSharing>;
export type NeedReport = z.output<typeof needReport>;
export type GraphLine = z.output<typeof graphLine>;
export type CheckReport = z.output<typeof checkReport>;
