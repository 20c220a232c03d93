import type { FastifyInstance, FastifyRequest } from "fastify";
import { Refusal } from "../lib/refusal.ts";

const READING = new Set(["GET", "HEAD", "OPTIONS"]);

/**
 * Keeps pages of other sites from making changes with the cookie of whoever looks at them, signing in included. Browsers
 * say where a request comes from (Fetch Metadata, W3C; Origin, RFC 6454); what says nothing is no browser and was given
 * its cookie by hand. A token is sent by nobody but a program, so such requests pass.
 */
export function installCrossSiteGuard(app: FastifyInstance): void {
  app.addHook("onRequest", async (request) => {
    if (READING.has(request.method) || bearerToken(request) !== undefined || isOwn(request)) return;
    throw new Refusal("cross-site", "A page of another site may not change anything here.");
  });
}

function isOwn({ headers, host }: FastifyRequest): boolean {
  const site = headers["sec-fetch-site"];
  if (site !== undefined) return site === "same-origin" || site === "none";
  const { origin } = headers;
  if (origin === undefined) return true;
  return URL.canParse(origin) && new URL(origin).host === host;
}

/** The token of `Authorization: Bearer …` (RFC 6750 section 2.1). */
export function bearerToken({ headers }: Pick<FastifyRequest, "headers">): string | undefined {
  return /^Bearer +(\S+)$/i.exec(headers.authorization ?? "")?.[1];
}
