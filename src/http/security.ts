import { isIP } from "node:net";
import helmet from "@fastify/helmet";
import type { FastifyInstance } from "fastify";
import { Refusal } from "../lib/refusal.ts";

/** Whether an address to listen on can be reached from this machine alone. */
export const isLoopback = (host: string): boolean =>
  host === "localhost" || host === "::1" || (isIP(host) === 4 && host.startsWith("127."));

/**
 * Security headers for a client that loads nothing from elsewhere; and, while only this machine can reach the service,
 * requests under any other name are refused: a page elsewhere could else point its own name here and read along.
 */
export async function installSecurity(app: FastifyInstance, listenHost: string): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: {
      directives: {
        "font-src": ["'self'", "data:"],
        "style-src": ["'self'", "'unsafe-inline'"],
        // served over plain HTTP on this machine; whoever puts TLS before it upgrades there
        "upgrade-insecure-requests": null,
      },
    },
    strictTransportSecurity: false,
  });
  if (!isLoopback(listenHost)) return;
  app.addHook("onRequest", async (request) => {
    const name = request.hostname.replace(/^\[|\]$/g, "");
    if (isLoopback(name) || name.endsWith(".localhost")) return;
    throw new Refusal("misdirected-request", `This service does not answer to the name ${name || "(none)"}.`);
  });
}
