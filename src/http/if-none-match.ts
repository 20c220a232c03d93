import type { FastifyRequest } from "fastify";
import { entityTag } from "./preconditions.ts";

/**
 * Whether the reader already has this version (RFC 9110 section 13.1.2): If-None-Match is `*` or names its tag, compared
 * weakly.
 */
export function isKnownToReader(request: FastifyRequest, version: number): boolean {
  const header = request.headers["if-none-match"]?.trim();
  if (header === undefined) return false;
  const tags: readonly string[] = header.match(/"[^"]*"/g) ?? [];
  return header === "*" || tags.includes(entityTag(version));
}
