import type { FastifyInstance, FastifyRequest, RouteOptions } from "fastify";
import type { Permission } from "../../shared/permissions.ts";
import { Refusal } from "../lib/refusal.ts";
import { type Authenticate, actorOf, membershipOf } from "./actor.ts";

/** Who may use a route: anyone, whoever is signed in, or members of the club in its address who have the permission. */
export type Access = "public" | "signed-in" | Permission;

declare module "fastify" {
  interface FastifyContextConfig {
    /** Every route of the API says it, but those that read a club's records: they ask for `read`. */
    access?: Access;
    /** A POST that only computes, and so is open to a token for reading. */
    changesNothing?: boolean;
  }
}

const API_ROUTE = /^\/api\//;
const CLUB_ROUTE = /\/:club(\/|$)/;
const READING = new Set(["GET", "HEAD", "OPTIONS"]);

/**
 * Finds out who asks, on every route of the API registered after this, and whether they may, before the body is even
 * read. A route that does not say who may use it stops the start: a feature can't forget it.
 */
export function installAuthorisation(app: FastifyInstance, authenticate: Authenticate): void {
  app.decorateRequest("actor", undefined);
  app.addHook("onRoute", (route) => {
    if (!isApiRoute(route.url)) return;
    const access = statedAccess(route);
    const changes = changesRecords(route);
    const ask = async (request: FastifyRequest) => {
      request.actor = await authenticate(request);
      if (access !== "public") admit(request, access, changes);
    };
    route.onRequest = [ask, ...[route.onRequest ?? []].flat()];
  });
}

export const isApiRoute = (url: string) => API_ROUTE.test(url);

/** Whether a token for reading alone is refused. */
export const changesRecords = ({ method, config }: RouteOptions) =>
  !READING.has([method].flat()[0] ?? "") && !config?.changesNothing;

/** Who may use a route, by what it says, and `read` where it reads a club's records; undefined where nothing says it. */
export function accessOf({ url, method, config }: RouteOptions): Access | undefined {
  const reads = [method].flat().every((one) => READING.has(one));
  return config?.access ?? (CLUB_ROUTE.test(url) && reads ? "read" : undefined);
}

/** @throws Error where the route does not say who may use it */
function statedAccess(route: RouteOptions): Access {
  const inClub = CLUB_ROUTE.test(route.url);
  const access = accessOf(route);
  if (access === undefined) throw new Error(`${route.method} ${route.url} does not say who may use it`);
  if (!inClub && access !== "public" && access !== "signed-in")
    throw new Error(`${route.method} ${route.url} asks for ${access}, but has no club in its address`);
  return access;
}

/** What one may not see looks the same as what is not there. */
function admit(request: FastifyRequest, access: Exclude<Access, "public">, changes: boolean): void {
  const actor = actorOf(request);
  const { club } = request.params as { club?: string };
  if (access !== "signed-in") {
    const { permissions } = membershipOf(request, club ?? "");
    if (!permissions.has(access))
      throw new Refusal("not-permitted", `This takes a role with the permission ${access}.`);
  }
  if (changes && !actor.mayWrite)
    throw new Refusal("not-permitted", "This token is for reading only: make one that may write.");
}
