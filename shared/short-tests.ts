import { z } from "zod";
import { code, note } from "./units.ts";

export const SHORT_TEST_RESULTS = ["passed", "failed"] as const;

/** A day of the calendar: `2027-03-20`. */
export const day = z.iso.date().meta({ description: "A day, 2027-03-20.", examples: ["2027-03-20"] });

/**
 * What happened when somebody laid metal across the rails of a district and watched its breaker. The one with the latest day
 * counts, of equal days the last by code.
 */
export const shortTest = z
  .strictObject({
    code,
    district: code.meta({ description: "The district that was tested." }),
    testedOn: day.meta({ description: "The day of the test." }),
    result: z.enum(SHORT_TEST_RESULTS).meta({
      description: "`passed`: its breaker opened wherever the rails were joined.",
    }),
    by: z.string().trim().max(120).default("").meta({ description: "Who tested it." }),
    note,
  })
  .meta({ id: "ShortTest" });

export type ShortTest = z.output<typeof shortTest>;

/** The test of a district that counts; undefined where there is none. */
export function latestTest(tests: readonly ShortTest[], district: string): ShortTest | undefined {
  return tests
    .filter((test) => test.district === district)
    .reduce<ShortTest | undefined>(
      (last, test) =>
        last === undefined ||
        test.testedOn > last.testedOn ||
        (test.testedOn === last.testedOn && test.code > last.code)
          ? test
          : last,
      undefined,
    );
}
