import type { FastifyRequest } from "fastify";
import type { Brand } from "../lib/brand.ts";
import type { Precondition } from "../lib/precondition.ts";
import { Refusal } from "../lib/refusal.ts";

export type EntityTag = Brand<string, "EntityTag">;

// RFC 9110 section 8.8.3: entity-tag = [ "W/" ] DQUOTE *etagc DQUOTE
const ENTITY_TAG = /^(?<weak>W\/)?"(?<opaque>[\x21\x23-\x7e\x80-\xff]*)"$/;
const TAG_LIST = /^(?:W\/)?"[^"]*"(?:[ \t]*,[ \t]*(?:W\/)?"[^"]*")*$/;

/** The strong entity tag of a record at a version. */
export const entityTag = (version: number): EntityTag => `"${version}"` as EntityTag;

/**
 * What If-Match demands (RFC 9110 section 13.1.1): any of its strong tags, or with `*` only that the record exists. A weak
 * tag never matches, as the comparison is a strong one.
 * @throws Refusal precondition-required when the header is missing (RFC 6585 section 3)
 */
export function readPrecondition(request: FastifyRequest): Precondition {
  const header = request.headers["if-match"]?.trim();
  if (header === undefined) throw new Refusal("precondition-required", "If-Match is missing.");
  if (header === "*") return { exists: true };
  if (!TAG_LIST.test(header))
    throw new Refusal("validation-failed", "If-Match is not a list of entity tags.", [
      {
        pointer: "/headers/if-match",
        detail: `Must be the record's ETag as it was sent, quotes included, such as "3".`,
      },
    ]);
  const tags = header.match(/(?:W\/)?"[^"]*"/g) ?? [];
  return { versions: tags.map(strongVersion).filter((version) => version !== undefined) };
}

function strongVersion(tag: string): number | undefined {
  const { weak, opaque } = ENTITY_TAG.exec(tag)?.groups ?? {};
  return weak === undefined && opaque !== undefined && /^[1-9]\d*$/.test(opaque) ? Number(opaque) : undefined;
}
