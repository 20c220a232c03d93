import type { FastifyRequest } from "fastify";
import { entityTag } from "./preconditions.ts";

/**
 * Whether the reader already has this version (RFC 9110 section 13.1.2): If-None-Match is `*` or names its tag, compared
 * weakly.
 */
export const isKnownToReader = (request: FastifyRequest, version: number): boolean =>
  isTagKnown(request, entityTag(version));

/** The same of what has no version but a tag of its own, quotes included. */
export function isTagKnown(request: FastifyRequest, tag: string): boolean {
  const header = request.headers["if-none-match"]?.trim();
  if (header === undefined) return false;
  const tags: readonly string[] = header.match(/"[^"]*"/g) ?? [];
  return header === "*" || tags.includes(tag);
}
