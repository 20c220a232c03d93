import type { z } from "zod";

/**
 * What zod found, as a sentence that says what the field must be. Handed to the parse, so it fills in only where the
 * schema brings no sentence of its own.
 */
export function faultSentence(issue: z.core.$ZodRawIssue): string | undefined {
  switch (issue.code) {
    case "invalid_type":
      if (issue.input === undefined) return `Is missing: it must be ${withArticle(issue.expected)}.`;
      // what a query or an address has that reads as no number
      if (Number.isNaN(issue.input)) return "Must be a number.";
      return `Must be ${withArticle(issue.expected)}, not ${withArticle(kindOf(issue.input))}.`;
    case "too_small":
      return `Must ${boundVerb(issue.origin)} ${issue.inclusive === false ? "more than" : "at least"} ${bound(issue.minimum, issue.origin)}.`;
    case "too_big":
      return `Must ${boundVerb(issue.origin)} ${issue.inclusive === false ? "less than" : "at most"} ${bound(issue.maximum, issue.origin)}.`;
    case "not_multiple_of":
      return `Must be a multiple of ${issue.divisor}.`;
    case "invalid_value":
      return `Must be ${issue.values.length === 1 ? "" : "one of "}${issue.values.map((value) => JSON.stringify(value)).join(", ")}.`;
    case "invalid_format":
      return `Must be written as ${FORMATS[issue.format] ?? issue.format}.`;
    case "unrecognized_keys":
      return "Is not a field here: check its spelling, or leave it out.";
    case "invalid_union":
      return "Fits none of the forms this may take: see the API reference.";
    default:
      return undefined;
  }
}

const FORMATS: Readonly<Record<string, string>> = {
  datetime: "a date and time of RFC 3339 with its offset, such as 2027-03-27T19:30:00Z",
  date: "a date, such as 2027-03-27",
  time: "a time, such as 19:30",
  uuid: "a UUID",
  url: "an address, such as https://example.org/",
  email: "a mail address",
};

function withArticle(kind: string): string {
  if (kind === "int") return "a whole number";
  if (kind === "null" || kind === "nothing") return kind;
  return /^[aeiou]/.test(kind) ? `an ${kind}` : `a ${kind}`;
}

function kindOf(input: unknown): string {
  if (input === null) return "null";
  if (Array.isArray(input)) return "array";
  if (input === Infinity || input === -Infinity) return "number too large to hold";
  if (typeof input === "number" && !Number.isInteger(input)) return "fraction";
  return typeof input === "string" ? "text" : typeof input;
}

const boundVerb = (origin: string) => (origin in COUNTED ? "have" : "be");

const COUNTED: Readonly<Record<string, readonly [one: string, many: string]>> = {
  string: ["character", "characters"],
  array: ["entry", "entries"],
  set: ["entry", "entries"],
  map: ["entry", "entries"],
};

function bound(limit: number | bigint, origin: string): string {
  const [one, many] = COUNTED[origin] ?? [];
  return one === undefined ? `${limit}` : `${limit} ${Number(limit) === 1 ? one : many}`;
}
