import { z } from "zod";
import { LIMITS } from "./limits.ts";
import { code, currentMa, lengthMm, limitMa, name, note, speedKmh } from "./units.ts";
import { CONDUCTORS, SECTION_USES, SECTION_WIRINGS, SHARINGS } from "./vocabulary.ts";

/** A part of the railway that a session runs analog or digital as one. */
export const area = z.strictObject({ code, name, note }).meta({ id: "Area" });

const positionMm = z.int().min(-1_000_000).max(1_000_000).nullable().default(null).meta({
  description:
    "Where it is in the room, mm from any corner; both or neither. Walking times between places are reckoned from it.",
});

/** A timing point: a station, junction or staging yard. */
export const place = z
  .strictObject({
    code,
    name,
    xMm: positionMm,
    yMm: positionMm,
    note,
  })
  .meta({ id: "Place" });

/** How long one walks from one place to another, as somebody measured it. */
export const walk = z
  .strictObject({
    code,
    from: code.meta({ description: "Place where one starts." }),
    to: code.meta({ description: "Place where one arrives." }),
    seconds: z.int().min(0).max(86_400).meta({
      description: "Seconds of real time. Good for the way back too, where that has no record of its own.",
    }),
    note,
  })
  .meta({ id: "Walk" });

/** The places along one line with their distance from its zero: the upright axis of a train graph. */
export const line = z
  .strictObject({
    code,
    name,
    stops: z
      .array(
        z.strictObject({
          place: code,
          atMm: z.int().min(0).max(10_000_000).meta({ description: "Millimetres from the line's zero." }),
        }),
      )
      .min(2)
      .max(200),
    note,
  })
  .meta({ id: "Line" });

/** A length of track that is fed, occupied and passed as one. */
export const section = z
  .strictObject({
    code,
    name,
    area: code.meta({ description: "The area it belongs to, which the session runs analog or digital." }),
    place: code
      .nullable()
      .default(null)
      .meta({ description: "The place it belongs to; none on the open line." }),
    use: z.enum(SECTION_USES).meta({ description: "What it is for; tells people, changes no figure." }),
    lengthMm,
    wiring: z.enum(SECTION_WIRINGS).meta({
      description: "How it can be fed. `both` follows what the session says of its area.",
    }),
    changeover: z.boolean().default(false).meta({
      description:
        "Can be switched between analog and digital while a train stands in it. Needs wiring `both`.",
    }),
    sharing: z.enum(SHARINGS).default("one-train").meta({
      description: "`shared`: under digital control trains may stand together while their lengths fit.",
    }),
    district: code
      .nullable()
      .default(null)
      .meta({ description: "The power district that feeds it under digital control." }),
    maxSpeedKmh: speedKmh
      .nullable()
      .default(null)
      .meta({ description: "Highest prototype speed in km/h while any of a train is here; none: no limit." }),
    mustClear: z.boolean().default(false).meta({
      description: "A train that calls here must fit: standing out would foul the points behind.",
    }),
    handStaging: z
      .boolean()
      .default(false)
      .meta({ description: "Stock is placed and removed here by hand." }),
    returnLoop: z.boolean().default(false).meta({
      description:
        "Part of a return loop, triangle or turntable whose polarity is turned over under the train: such sections in a row must hold all of it.",
    }),
    note,
  })
  .meta({ id: "Section" });

/** Two sections that join, so that a train passes from one to the other. */
export const link = z
  .strictObject({
    code,
    from: code.meta({ description: "Section at one end." }),
    to: code.meta({ description: "Section at the other." }),
    oneWay: z.boolean().default(false).meta({ description: "Only from `from` to `to`; else both ways." }),
    note,
  })
  .meta({ id: "Link" });

/** A digital system that handsets belong to. */
export const commandSystem = z
  .strictObject({
    code,
    name,
    mostHandsets: z
      .int()
      .min(1)
      .max(10_000)
      .nullable()
      .default(null)
      .meta({ description: "Most handsets it takes at once; none: no limit." }),
    mostAddresses: z
      .int()
      .min(1)
      .max(10_240)
      .nullable()
      .default(null)
      .meta({ description: "Most decoder addresses it drives at once; none: no limit." }),
    shortAddressMost: z.int().min(1).max(127).default(127).meta({
      description: "Highest short address it accepts; NMRA S-9.2.1 allows 127.",
    }),
    longAddressMost: z.int().min(128).max(10_239).default(10_239).meta({
      description: "Highest long address it accepts; NMRA S-9.2.1 allows 10239.",
    }),
    note,
  })
  .meta({ id: "CommandSystem" });

/** A digital supply (booster): the districts it feeds share its rating. */
export const supply = z
  .strictObject({
    code,
    name,
    commandSystem: code.meta({ description: "The command system whose signal it carries." }),
    ratingMa: limitMa.meta({
      description: "Most current it can give to all its districts and accessories together.",
    }),
    accessoryMa: currentMa.default(0).meta({ description: "Constant draw of accessories fed from it." }),
    volts: z.number().gt(0).max(33).default(16).meta({ description: "Track voltage." }),
    sourceOhm: z.number().min(0).max(10).default(0.1).meta({
      description:
        "Its own resistance in ohms, as a short at its terminals meets it; an assumption until measured.",
    }),
    note,
  })
  .meta({ id: "Supply" });

/** The two-wire run from a supply to the far end of what it feeds. */
export const wiring = z
  .strictObject({
    conductor: z.enum(CONDUCTORS).meta({ description: "What both its wires are: size and kind." }),
    lengthMm: lengthMm.meta({ description: "One way, from the supply to the farthest rail joint." }),
    temperatureC: z
      .number()
      .min(-40)
      .max(90)
      .default(20)
      .meta({ description: "Temperature at which its resistance is taken." }),
  })
  .meta({ id: "Wiring" });

/** The sections behind one circuit breaker. */
export const district = z
  .strictObject({
    code,
    name,
    supply: code.meta({ description: "The supply that feeds it." }),
    breakerMa: limitMa.meta({ description: "Current at which its breaker trips." }),
    tripDelayMs: z
      .int()
      .min(0)
      .max(60_000)
      .default(100)
      .meta({ description: "How long its breaker bears more before it opens." }),
    wiring: wiring
      .nullable()
      .default(null)
      .meta({ description: "How its farthest track is wired; none: not written down." }),
    note,
  })
  .meta({ id: "District" });

export const controllerOutput = z
  .strictObject({
    code: code.meta({ description: "Short name of the output, unique in the club." }),
    name,
    ratingMa: limitMa.meta({ description: "Most current it can give." }),
  })
  .meta({ id: "ControllerOutput" });

/** An analog controller; its outputs share its transformer. Output codes are unique in the club. */
export const controller = z
  .strictObject({
    code,
    name,
    place: code.nullable().default(null).meta({ description: "Where it stands." }),
    transformerMa: limitMa.meta({ description: "Rating of the transformer behind all its outputs." }),
    accessoryMa: currentMa.default(0).meta({ description: "Constant draw of its accessory output." }),
    outputs: z.array(controllerOutput).min(1).max(LIMITS.outputsPerController),
    note,
  })
  .meta({ id: "Controller" });

/** The switch that feeds one section from one of several outputs, or from none. */
export const selector = z
  .strictObject({
    code,
    section: code.meta({ description: "The section it feeds; a section has one selector at most." }),
    outputs: z
      .array(code)
      .min(1)
      .max(LIMITS.controllers * LIMITS.outputsPerController)
      .meta({ description: "Controller outputs it can turn to; it can always be off." }),
    note,
  })
  .meta({ id: "Selector" });

export type Area = z.output<typeof area>;
export type Place = z.output<typeof place>;
export type Walk = z.output<typeof walk>;
export type Line = z.output<typeof line>;
export type Section = z.output<typeof section>;
export type Link = z.output<typeof link>;
export type CommandSystem = z.output<typeof commandSystem>;
export type Supply = z.output<typeof supply>;
export type Wiring = z.output<typeof wiring>;
export type District = z.output<typeof district>;
export type Controller = z.output<typeof controller>;
export type Selector = z.output<typeof selector>;
