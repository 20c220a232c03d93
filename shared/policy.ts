import { z } from "zod";
import { realSeconds } from "./units.ts";

/** How the club runs its railway. Every figure is real time or a share; a session may set its own. */
export const policy = z
  .strictObject({
    setUpSeconds: realSeconds
      .default(5)
      .meta({ description: "A section is taken this long before the head enters it." }),
    releaseSeconds: realSeconds
      .default(5)
      .meta({ description: "A section is freed this long after the tail clears it." }),
    releaseDwellSeconds: realSeconds.default(30).meta({
      description:
        "At a call of at least this long a train may give up its controller output and take another.",
    }),
    pickUpSeconds: realSeconds
      .default(60)
      .meta({ description: "A handset or output is needed from this long before departure." }),
    handInSeconds: realSeconds.default(30).meta({ description: "… until this long after arrival." }),
    reserve: z
      .number()
      .min(0)
      .max(0.9)
      .default(0.2)
      .meta({ description: "Share of every current limit that should stay free; 0.2 is 20 %." }),
    inrushSeconds: realSeconds
      .default(0.2)
      .meta({ description: "How long the surge lasts when track power returns: an assumption." }),
    faultMargin: z
      .number()
      .min(1)
      .max(20)
      .default(2)
      .meta({ description: "A short at the far end must bring at least this many times the trip current." }),
    dropShare: z
      .number()
      .gt(0)
      .max(0.9)
      .default(0.05)
      .meta({ description: "Share of a supply's volts that its wires may lose at the peak." }),
    busyShare: z
      .number()
      .gt(0)
      .max(1)
      .default(0.75)
      .meta({ description: "Share of the time for which a section may be taken, trains pushed together." }),
    walkingDetour: z
      .number()
      .min(1)
      .max(10)
      .default(1.4)
      .meta({ description: "How many times the straight line one walks, where no walk is stated." }),
    walkingMmPerSecond: z
      .int()
      .min(100)
      .max(5_000)
      .default(1_000)
      .meta({ description: "How fast one walks, mm of real floor a second." }),
  })
  .meta({ id: "Policy" });

export type Policy = z.output<typeof policy>;
