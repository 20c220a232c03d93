import { z } from "zod";
import { code, note } from "./units.ts";

export const SHORT_TEST_RESULTS = ["passed", "failed"] as const;

/** A day of the calendar: `2027-03-20`. */
export const day = z.iso.date().meta({ description: "A day, 2027-03-20.", examples: ["2027-03-20"] });

/** A time of a day: `19:35`, `19:35:30`. */
const timeOfDay = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d(:[0-5]\d)?$/, "Write the time as 09:35 or 09:35:30.")
  .meta({ description: "A time of day, 09:35 or 09:35:30.", examples: ["09:35"] });

/**
 * What happened when somebody laid metal across the rails of a district and watched its breaker. The last one counts: by
 * day, then by time, one without a time being its day's first; of two that nothing else tells apart, one that failed.
 */
export const shortTest = z
  .strictObject({
    code,
    district: code.meta({ description: "The district that was tested." }),
    testedOn: day.meta({ description: "The day of the test." }),
    testedAt: timeOfDay.nullable().default(null).meta({
      description:
        "The time of the test by the club's clock; none: it is not known, and later ones of its day count.",
    }),
    result: z.enum(SHORT_TEST_RESULTS).meta({
      description: "`passed`: its breaker opened wherever the rails were joined.",
    }),
    by: z.string().trim().max(120).default("").meta({ description: "Who tested it." }),
    note,
  })
  .meta({ id: "ShortTest" });

export type ShortTest = z.output<typeof shortTest>;

/** The test of a district that counts; undefined where there is none. Cost: sorting. */
export function latestTest(tests: readonly ShortTest[], district: string): ShortTest | undefined {
  return tests
    .filter((test) => test.district === district)
    .sort(
      (a, b) =>
        compare(a.testedOn, b.testedOn) ||
        compare(a.testedAt ?? "", b.testedAt ?? "") ||
        Number(a.result === "failed") - Number(b.result === "failed") ||
        compare(a.code, b.code),
    )
    .at(-1);
}

/** Days and times as written sort like the instants: `09:35` before `09:35:30`. */
const compare = (a: string, b: string) => (a < b ? -1 : Number(a > b));
