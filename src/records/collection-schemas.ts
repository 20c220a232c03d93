import { z } from "zod";
import { recordState } from "../../shared/records.ts";
import { pageQuery } from "../http/pages.ts";
import { capitalise } from "../lib/words.ts";
import type { RecordKind } from "./record-kind.ts";

const searchText = z
  .string()
  .min(1)
  .max(120)
  .regex(/^[^\0\p{Surrogate}]*$/u, "Must be text without NUL characters.");

/** What a list takes in its query: the page, a text to search for, and the kind's own filters. */
export function listQuery({ schema, filters = {} }: RecordKind) {
  const named = "name" in schema.shape;
  const q = searchText.optional().meta({
    description: `Only those with this text in their code${named ? " or name" : ""}, in any case.`,
  });
  const own = Object.fromEntries(
    Object.entries(filters).map(([name, filter]) => [name, filter.schema.optional()]),
  );
  return z.strictObject({ ...pageQuery.shape, q, ...own });
}

/** The condition that a parsed query stands for. */
export function toWhere(
  { schema, filters = {} }: RecordKind,
  query: Readonly<Record<string, unknown>> & { readonly q?: unknown },
): object {
  const conditions = Object.entries(filters)
    .filter(([name]) => query[name] !== undefined)
    .map(([name, filter]) => filter.where(query[name] as never));
  const { q } = query;
  if (typeof q === "string") conditions.push(searchCondition(q, "name" in schema.shape));
  return { AND: conditions };
}

function searchCondition(text: string, named: boolean): object {
  // contains is a LIKE underneath, and does not escape its wildcards
  const contains = text.replace(/[\\%_]/g, "\\$&");
  const holds = { contains, mode: "insensitive" };
  return { OR: [{ code: holds }, ...(named ? [{ name: holds }] : [])] };
}

/** A body with its example. */
export const bodySchema = ({ schema, example }: RecordKind) => schema.meta({ examples: [example] });

/** A record as it is answered: its body, and which version of it this is. */
export const recordSchema = ({ one, schema }: RecordKind) =>
  z.object({ ...schema.shape, ...recordState }).meta({ id: `${capitalise(one)}Record` });

/** Headers that make a request conditional. They are named for the reference page; others pass. */
export const changeHeaders = z.looseObject({
  "if-match": z
    .string()
    .optional()
    .meta({
      description: "The ETag of the record as it was read; `*` changes it whatever it is now.",
      examples: ['"3"'],
    }),
});

export const readHeaders = z.looseObject({
  "if-none-match": z
    .string()
    .optional()
    .meta({ description: "An ETag that the reader has: 304 without a body if it is still the record's." }),
});
