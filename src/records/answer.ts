import type { FastifyReply } from "fastify";
import type { RecordState } from "../../shared/records.ts";
import type { Stored } from "../database/records/record-table.ts";
import { entityTag } from "../http/preconditions.ts";

/** A stored record as it is answered. The route's response schema lets only its fields through. */
export const present = <Body>({ body, version, updatedAt }: Stored<Body>): Body & RecordState => ({
  ...body,
  version,
  updatedAt: updatedAt.toISOString(),
});

/** Sends the record with its ETag. */
export const answer = <Body>(reply: FastifyReply, stored: Stored<Body>) =>
  reply.header("etag", entityTag(stored.version)).send(present(stored));
