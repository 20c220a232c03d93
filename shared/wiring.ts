import { z } from "zod";
import { wiring } from "./layout.ts";
import { shortTest } from "./short-tests.ts";
import { code, layoutReading } from "./units.ts";
import { CONDUCTORS } from "./vocabulary.ts";

const volts = z.number().meta({ description: "Volts." });

/** The two-wire run of a district at the peak that the slot's timetable causes. */
export const wireReport = z
  .strictObject({
    ...wiring.shape,
    loopOhm: z.number().meta({ description: "Resistance there and back at that temperature." }),
    dropV: volts.meta({ description: "Lost in the wires at the peak." }),
    dropLimitV: volts.meta({ description: "What they may lose: the policy's share of the supply's volts." }),
    farEndV: volts.meta({ description: "Left at the far end at the peak." }),
    faultMa: z
      .int()
      .nullable()
      .meta({ description: "What a short at the far end would bring; none: nothing holds it back." }),
    faultLimitMa: z.int().meta({ description: "What it must bring: the trip current times the margin." }),
    dropFails: z.boolean().meta({ description: "The wires lose more than they may." }),
    voltsFail: z.boolean().meta({ description: "Less is left than decoders are made for." }),
    faultFails: z.boolean().meta({ description: "The breaker is not sure to see a short at the far end." }),
    thinnest: z.enum(CONDUCTORS).nullable().meta({
      description:
        "The thinnest conductor that does all of it over this length; none: shorten the run or divide the district.",
    }),
  })
  .meta({ id: "WireReport" });

export const districtWiring = z
  .strictObject({
    code,
    name: z.string(),
    supply: code,
    supplyName: z.string(),
    supplyVolts: volts,
    sourceOhm: z.number().meta({ description: "The supply's own resistance, ohms." }),
    breakerMa: z.int().meta({ description: "Current at which its breaker trips, mA." }),
    tripDelayMs: z.int().meta({ description: "How long its breaker bears more, ms." }),
    peakMa: z.int().meta({ description: "The most that the slot's trains draw from it at once." }),
    peakLayout: layoutReading,
    wire: wireReport.nullable().meta({ description: "None where its wiring is not written down." }),
    test: shortTest.nullable().meta({ description: "The short test that counts; none: it has none." }),
    sentence: z.string().meta({ description: "How it stands, in one sentence." }),
    isSound: z.boolean().meta({ description: "Wired so that nothing fails, and its last test passed." }),
    checklist: z.array(z.string()).meta({ description: "The short test, step by step, with its figures." }),
  })
  .meta({ id: "DistrictWiring" });

export const wiringReport = z
  .strictObject({
    headline: z.string().meta({ description: "The answer in a sentence." }),
    leastV: volts.meta({ description: "The least at the track: NMRA S-9.1 for the club's scale." }),
    mostV: volts.meta({ description: "The most at the track: NMRA S-9.1." }),
    survivedV: volts.meta({ description: "What decoders must survive: NMRA S-9.1." }),
    districts: z.array(districtWiring),
    cautions: z.array(z.string()).meta({ description: "What anybody who works on wires must know first." }),
  })
  .meta({ id: "WiringReport" });

export type WireReport = z.output<typeof wireReport>;
export type DistrictWiring = z.output<typeof districtWiring>;
export type WiringReport = z.output<typeof wiringReport>;
