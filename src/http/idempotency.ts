import { createHash } from "node:crypto";
import type { FastifyRequest } from "fastify";
import { z } from "zod";
import { Refusal } from "../lib/refusal.ts";
import { actorOf } from "./actor.ts";

// a structured string or a bare token: whatever a client makes up, as long as others would not
const KEY = /^[\x21-\x7e]{8,200}$/;

/** The header, for a route's schema. */
export const retryHeaders = z.looseObject({
  "idempotency-key": z
    .string()
    .optional()
    .meta({
      description:
        "Made up anew for each thing done, 8 to 200 printable characters without blanks: the same request with the same key is done once, and answered the same again.",
      examples: ["5f0c2b9e-claim-1A03"],
    }),
});

/**
 * What makes this request the same as one before: whoever sends it, the key, and all it says. Undefined where it brings
 * no key.
 * @throws Refusal validation-failed for one that is no key
 */
export function readRetryKey(request: FastifyRequest) {
  const header = request.headers["idempotency-key"];
  if (header === undefined) return undefined;
  if (typeof header !== "string" || !KEY.test(header))
    throw new Refusal("validation-failed", "The Idempotency-Key is not one.", [
      {
        pointer: "/headers/idempotency-key",
        detail: "Must have 8 to 200 printable characters without blanks, such as a UUID.",
      },
    ]);
  const said = [request.method, request.url, canonical(request.body)].join("\n");
  return {
    owner: actorOf(request).personId ?? "local",
    key: header,
    fingerprint: createHash("sha256").update(said).digest("base64url"),
  };
}

/** The same whatever the order of its fields. */
function canonical(value: unknown): string {
  return JSON.stringify(value ?? null, (_, held: unknown) =>
    typeof held === "object" && held !== null && !Array.isArray(held)
      ? Object.fromEntries(Object.entries(held).sort(([a], [b]) => (a < b ? -1 : 1)))
      : held,
  );
}
