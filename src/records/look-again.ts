import { sqlstate } from "../database/errors.ts";
import { Refusal } from "../lib/refusal.ts";

const LOOKS = 3;
// SQLSTATE class 23, integrity constraint violation
const CONSTRAINT = /^23/;

/**
 * Runs `attempt`, which looks at the records and then writes. When the write fails although the look found nothing
 * wrong (a constraint refused it, or it returns undefined), someone else wrote in between: a second look then finds
 * what is wrong now, and says it.
 */
export async function lookAgain<T>(attempt: () => Promise<T | undefined>): Promise<T> {
  for (let look = 1; look <= LOOKS; look++) {
    const result = await attempt().catch((error: unknown) => {
      if (!CONSTRAINT.test(sqlstate(error) ?? "")) throw error;
      return undefined;
    });
    if (result !== undefined) return result;
  }
  throw new Refusal("conflict", "Others changed the same records at the same moment: try again.");
}
