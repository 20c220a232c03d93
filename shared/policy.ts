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
  })
  .meta({ id: "Policy" });

export type Policy = z.output<typeof policy>;
