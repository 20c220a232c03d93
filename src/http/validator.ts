import type { FastifySchemaCompiler } from "fastify";
import type { z } from "zod";
import type { Fault } from "../../shared/errors.ts";
import { Refusal } from "../lib/refusal.ts";
import { faultSentence } from "./fault-sentence.ts";

// what a person can take in; a file with one mistake in every line would otherwise answer with megabytes
const MOST_FAULTS = 50;

const PART_NAMES: Readonly<Record<string, string>> = { querystring: "query", params: "path" };

/** Checks each part of a request against its zod schema; every fault points into the request and says what must be there. */
export const validatorCompiler: FastifySchemaCompiler<z.ZodType> = ({ schema, httpPart = "body" }) => {
  const part = PART_NAMES[httpPart] ?? httpPart;
  return (input) => {
    const { success, data, error } = schema.safeParse(input ?? undefined, { error: faultSentence });
    return success ? { value: data } : { error: refuse(error.issues, part) };
  };
};

function refuse(issues: readonly z.core.$ZodIssue[], part: string): Refusal {
  const all = issues.flatMap((issue) => faultsOf(issue, part));
  const shown = all.slice(0, MOST_FAULTS);
  const [first] = shown;
  const count = all.length === 1 ? "One place is not as it" : `${all.length} places are not as they`;
  const rest = all.length > shown.length ? ` The first ${shown.length} are listed.` : "";
  return new Refusal(
    "validation-failed",
    `${count} must be, first ${first?.pointer}: ${first?.detail}${rest}`,
    shown,
  );
}

function faultsOf(issue: z.core.$ZodIssue, part: string): readonly Fault[] {
  const at = [part, ...issue.path];
  const paths = issue.code === "unrecognized_keys" ? issue.keys.map((key) => [...at, key]) : [at];
  return paths.map((path) => ({ pointer: toPointer(path), detail: issue.message }));
}

/** RFC 6901 section 3: `~` and `/` inside a name are written `~0` and `~1`. */
export function toPointer(path: readonly PropertyKey[]): string {
  return path.map((step) => `/${String(step).replaceAll("~", "~0").replaceAll("/", "~1")}`).join("");
}
