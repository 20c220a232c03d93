import type { FastifyRequest } from "fastify";
import { type Actor, actorOf, type Entry } from "../../http/actor.ts";
import { Refusal } from "../../lib/refusal.ts";
import { onlyInBrowser } from "./errors.ts";

/** A person who makes a request, and how they came in. */
export interface Visitor {
  readonly personId: string;
  readonly actor: Actor;
  readonly entry: Entry;
}

/** @throws Refusal not-found for one without an account */
export function visitorOf(request: FastifyRequest): Visitor {
  const actor = actorOf(request);
  if (actor.personId === null || actor.entry === undefined)
    throw new Refusal("not-found", "Whoever asks has no account.");
  return { personId: actor.personId, actor, entry: actor.entry };
}

/**
 * For what a token may never do, so that one that leaks cannot make others or take the account away.
 * @throws Refusal not-permitted for a token
 */
export function browserOf(request: FastifyRequest): Visitor {
  const visitor = visitorOf(request);
  if (visitor.entry.kind !== "sign-in") throw onlyInBrowser();
  return visitor;
}
