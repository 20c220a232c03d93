import type { FastifyRequest } from "fastify";
import { PERMISSIONS, type Permission } from "../../shared/permissions.ts";
import { Refusal } from "../lib/refusal.ts";

/** What someone is in one club. */
export interface Membership {
  /** The member's code in the club; null for one who is in no list of members. */
  readonly member: string | null;
  readonly permissions: ReadonlySet<Permission>;
}

/** Whoever makes a request. */
export interface Actor {
  /** Null for one without an account. */
  readonly personId: string | null;
  readonly name: string;
  /** A token may be good for reading alone. */
  readonly mayWrite: boolean;
  /** Undefined where they do not belong to the club, or there is none of that code. */
  membership(clubCode: string): Membership | undefined;
  /** How they came in, for one with an account. */
  readonly entry?: Entry;
}

/** What lets a person in: a sign-in in a browser, or a token of a program's. */
export interface Entry {
  readonly kind: "sign-in" | "token";
  readonly id: string;
  readonly expiresAt: Date;
  /** Codes of the clubs it opens. */
  readonly clubs: readonly string[];
  /** Whether it is good for one club alone. */
  readonly isForOneClub: boolean;
}

/**
 * Finds out who makes a request, from a cookie or a token; undefined when nobody says so.
 * @throws Refusal when what was presented is no good
 */
export type Authenticate = (request: FastifyRequest) => Promise<Actor | undefined>;

declare module "fastify" {
  interface FastifyRequest {
    /** Set before any handler of a route that is not public. */
    actor: Actor | undefined;
  }
}

const ALL: Membership = { member: null, permissions: new Set(PERMISSIONS) };

/** Whoever sits at the machine: may do everything in every club. For tests and work without accounts. */
export const localActor: Actor = {
  personId: null,
  name: "local",
  mayWrite: true,
  membership: () => ALL,
};

export const admitLocalUser: Authenticate = async () => localActor;

/** @throws Refusal not-signed-in */
export function actorOf(request: FastifyRequest): Actor {
  if (request.actor) return request.actor;
  throw new Refusal("not-signed-in", "Sign in first, or send a token.");
}

export const noClub = (club: string) => new Refusal("not-found", `There is no club ${club}.`);

/** @throws Refusal not-found, where the actor does not belong to the club */
export function membershipOf(request: FastifyRequest, clubCode: string): Membership {
  const membership = actorOf(request).membership(clubCode);
  if (membership) return membership;
  throw noClub(clubCode);
}
