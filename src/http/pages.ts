import { z } from "zod";
import { Refusal } from "../lib/refusal.ts";

const DEFAULT_LIMIT = 50;
const LARGEST_LIMIT = 200;

/** What every list takes in its query; a feature extends it with its filters. */
export const pageQuery = z.strictObject({
  limit: z.coerce
    .number()
    .int()
    .min(1)
    .max(LARGEST_LIMIT)
    .default(DEFAULT_LIMIT)
    .meta({
      description: `Most items to send, 1 to ${LARGEST_LIMIT}.`,
    }),
  cursor: z.string().min(1).max(1_000).optional().meta({
    description: "Where to go on: `next` of the page before. Its content means nothing outside the service.",
  }),
});

/** A list's answer: items in the list's order, and where the next page starts, null on the last. */
export const pageOf = <Item extends z.ZodType>(item: Item) =>
  z.object({
    items: z.array(item),
    next: z
      .string()
      .nullable()
      .meta({ description: "Send it as `cursor` for the next page; null on the last." }),
  });

/**
 * Makes a page of rows read in order, one more than `limit` where there are more. `keyOf` names the row's place in that
 * order: unique, so that nothing is shown twice or left out while others write.
 */
export function toPage<Row, Item>(
  rows: readonly Row[],
  limit: number,
  keyOf: (row: Row) => readonly (string | number)[],
  toItem: (row: Row) => Item,
): { items: Item[]; next: string | null } {
  const shown = rows.slice(0, limit);
  const last = shown.at(-1);
  const next = rows.length > limit && last !== undefined ? toCursor(keyOf(last)) : null;
  return { items: shown.map(toItem), next };
}

/**
 * The key after which a page starts, undefined for the first page.
 * @throws Refusal validation-failed for a cursor that no page of this list gave
 */
export function parseCursor<Key extends z.ZodType>(
  cursor: string | undefined,
  key: Key,
): z.output<Key> | undefined {
  if (cursor === undefined) return undefined;
  const parsed = key.safeParse(decode(cursor));
  if (parsed.success) return parsed.data;
  throw new Refusal("validation-failed", "The cursor is not one that this list gave.", [
    {
      pointer: "/query/cursor",
      detail: "Must be `next` of the page before, unchanged; leave it out for the first page.",
    },
  ]);
}

const toCursor = (key: readonly (string | number)[]) =>
  Buffer.from(JSON.stringify(key)).toString("base64url");

function decode(cursor: string): unknown {
  try {
    return JSON.parse(Buffer.from(cursor, "base64url").toString());
  } catch {
    return undefined;
  }
}
