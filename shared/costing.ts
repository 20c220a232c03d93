import { z } from "zod";
import { clockRatio, code } from "./units.ts";

const ma = z.int().meta({ description: "Milliamperes." });

export const analogCost = z
  .strictObject({
    sentence: z.string(),
    outputs: z
      .int()
      .meta({ description: "Controller outputs, each reaching every section: the fewest there can be." }),
    reach: z.array(z.array(code)).meta({
      description: "What each output feeds where runs are shared out so: what its selectors must reach.",
    }),
    isAssigned: z.boolean().meta({ description: "Every run got an output within the limit of the search." }),
    turns: z
      .strictObject({
        made: z.int().meta({ description: "Selectors turned in the slot." }),
        atLeast: z.int().meta({ description: "No assignment needs fewer." }),
        anHour: z.number().meta({ description: "For each hour of real time." }),
      })
      .nullable()
      .meta({ id: "CostedTurns", description: "None where sections must be divided first." }),
    divide: z
      .array(
        z
          .strictObject({
            section: code,
            parts: z.int().meta({ description: "Sections to make of it." }),
          })
          .meta({ id: "Division" }),
      )
      .meta({
        description: "Sections in which trains are together now, and into how many each must be cut.",
      }),
    newSections: z.int().meta({ description: "How many sections that makes more." }),
    peakOutputMa: ma.meta({ description: "The most that one output gives." }),
    peakTogetherMa: ma.meta({ description: "The most that all give together, accessories included." }),
    accessoriesMa: ma.meta({ description: "What accessories take of that all the time." }),
    unfit: z.array(code).meta({ description: "Locomotives whose decoder does not run on analog track." }),
  })
  .meta({ id: "AnalogCost" });

export const digitalCost = z
  .strictObject({
    sentence: z.string(),
    handsets: z.int().meta({ description: "In use at once." }),
    handsetsWithSpares: z.int().meta({ description: "With one in ten to spare, at least one." }),
    decoders: z.array(code).meta({ description: "Locomotives to fit with one." }),
    peakMa: ma.meta({ description: "All that trains draw at once, at the most." }),
    accessoriesMa: ma.meta({ description: "What accessories take beside it all the time." }),
    breakerMa: ma.meta({ description: "What a district's breaker was taken to be good for." }),
    ratingMa: ma.meta({ description: "What a booster was taken to be good for." }),
    districts: z
      .array(z.strictObject({ sections: z.array(code), peakMa: ma }).meta({ id: "CostedDistrict" }))
      .meta({
        description:
          "Sections along the track, with the reserve free at the peak of each. Those that draw nothing go with their neighbours, or are in none where these draw nothing either.",
      }),
    leastDistricts: z.int().meta({ description: "Fewer could not hold the peak." }),
    supplies: z
      .array(
        z
          .strictObject({
            districts: z.array(z.int()),
            accessoryMa: ma.meta({ description: "What accessories take of its peak." }),
            peakMa: ma,
          })
          .meta({ id: "CostedSupply" }),
      )
      .meta({
        description:
          "Boosters, each with its districts by position and as much of the accessories as it has room for.",
      }),
    leastSupplies: z.int().meta({ description: "Fewer could not hold the peak." }),
    tooMuch: z
      .array(code)
      .meta({ description: "Sections that draw more than one breaker, or the booster behind it, bears." }),
  })
  .meta({ id: "DigitalCost" });

export const stretch = z
  .strictObject({
    kind: z
      .enum([
        "handsets",
        "handset-limit",
        "addresses",
        "outputs",
        "output",
        "transformer",
        "district",
        "supply",
      ])
      .meta({
        description:
          "What part of the equipment it is: handsets in stock, what a command system takes at once, how many outputs there are; the others are currents.",
      }),
    name: z.string(),
    used: z.number().meta({ description: "Taken at once by the timetable; currents in mA." }),
    has: z
      .number()
      .meta({ description: "What there is; of currents without the reserve and what accessories take." }),
    trains: z.int().meta({ description: "Trains at once that it would bear." }),
  })
  .meta({ id: "Stretch" });

export const costTimetable = z.strictObject({ clockRatio }).meta({ id: "CostTimetable" });

export const bothWays = z
  .strictObject({
    headline: z.string().meta({ description: "The answer in a sentence." }),
    analog: analogCost,
    digital: digitalCost,
    mostTrains: z
      .strictObject({
        sentence: z.string(),
        now: z.int().meta({ description: "Trains on their way at once, at the most." }),
        most: z.int().nullable().meta({
          description: "That the present equipment bears; none: nothing limits it, or nothing runs.",
        }),
        stretches: z.array(stretch).meta({ description: "What gives first is first." }),
      })
      .meta({ id: "MostTrains" }),
    assumptions: z.array(z.string()),
  })
  .meta({ id: "BothWays" });

export type BothWays = z.output<typeof bothWays>;
