import type { RouteOptions } from "fastify";
import type { RefusalCode } from "../../shared/errors.ts";
import { accessOf, changesRecords, isApiRoute } from "./authorise.ts";
import { refusalResponses } from "./problem-details.ts";

/** A response as a route's schema describes it. */
interface Described {
  readonly description?: string;
}

/**
 * The responses of a route with the refusals that come before it is reached: who asks, whether they may, whether the body
 * can be read at all. Routes name only their own.
 */
export function withUsualRefusals(route: RouteOptions, responses: object = {}): Record<string, unknown> {
  const own = responses as Readonly<Record<string, Described>>;
  const usual = refusalResponses(...usualRefusals(route)) as Readonly<Record<string, Described>>;
  const merged: Record<string, unknown> = { ...own };
  for (const [status, response] of Object.entries(usual)) {
    const told = own[status]?.description ?? "";
    const extra = response.description ?? "";
    if (told === "") merged[status] = response;
    else if (!told.includes(extra)) merged[status] = { ...own[status], description: `${extra} ${told}` };
  }
  return merged;
}

function usualRefusals(route: RouteOptions): RefusalCode[] {
  if (!isApiRoute(route.url)) return [];
  const access = accessOf(route);
  const codes: RefusalCode[] = [];
  const isOpen = access === undefined || access === "public";
  if (!isOpen) codes.push("not-signed-in");
  if (!isOpen && (access !== "read" || changesRecords(route))) codes.push("not-permitted");
  if (route.schema?.body !== undefined) codes.push("body-too-large", "unsupported-media-type");
  return codes;
}
