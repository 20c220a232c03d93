import { z } from "zod";
import { LIMITS } from "../../shared/limits.ts";

/** A version of a timetable in an address. */
export const versionNumber = z.coerce.number().int().min(1).max(LIMITS.versions).meta({
  description: "Number of the version, counting from 1.",
});
