import { z } from "zod";
import { policy } from "./policy.ts";
import { code, name, note, scaleDenominator } from "./units.ts";

export const club = z
  .strictObject({
    code,
    name,
    timeZone: z
      .string()
      .max(60)
      .meta({ description: "IANA time zone of the club room.", examples: ["Europe/London"] }),
    scale: scaleDenominator,
    policy: policy.prefault({}),
    note,
  })
  .meta({ id: "Club" });

export type Club = z.output<typeof club>;
