import Fastify, { type FastifyServerOptions } from "fastify";
import type { ZodTypeProvider } from "fastify-type-provider-zod";
import { LIMITS } from "../../shared/limits.ts";
import { answer, type Recognise } from "./error-handler.ts";
import { answerRaw } from "./raw-errors.ts";

// for a whole request to arrive, over a slow line at the largest size
const REQUEST_LIMIT_MS = 120_000;

interface BareOptions {
  readonly logger: NonNullable<FastifyServerOptions["logger"]>;
  readonly recognise: Recognise;
  /** Addresses of proxies whose X-Forwarded headers are believed; of everybody else's, none. */
  readonly trustedProxies: readonly string[];
}

/** What routes are registered on: Fastify with the types of their zod schemas. */
export type HttpApp = ReturnType<typeof createBareApp>;

/** The framework with its limits, and every way it has of failing before a route is reached in our form. */
export function createBareApp({ logger, recognise, trustedProxies }: BareOptions) {
  return Fastify({
    logger,
    bodyLimit: LIMITS.bodyBytes,
    trustProxy: trustedProxies.length > 0 ? [...trustedProxies] : false,
    requestTimeout: REQUEST_LIMIT_MS,
    // connections that wait for a next request close at once, those with one in work after their answer
    forceCloseConnections: "idle",
    // a request that arrives while closing is still answered, in our form, and its connection then closed
    return503OnClosing: false,
    frameworkErrors: (error, request, reply) => answer(error, recognise, request, reply),
    clientErrorHandler: answerRaw,
  }).withTypeProvider<ZodTypeProvider>();
}
