import Fastify, { type FastifyServerOptions } from "fastify";
import { serializerCompiler, type ZodTypeProvider } from "fastify-type-provider-zod";
import { LIMITS } from "../../shared/limits.ts";
import { installClosing } from "./closing.ts";
import { answer, installErrorHandler, type Recognise } from "./error-handler.ts";
import { installHealth } from "./health.ts";
import { type ApiDescription, installOpenApi } from "./openapi.ts";
import { installProblemPages } from "./problem-pages.ts";
import { answerRaw } from "./raw-errors.ts";
import { installSecurity } from "./security.ts";
import { installClient } from "./static-client.ts";
import { validatorCompiler } from "./validator.ts";

export interface HttpOptions {
  readonly logger: NonNullable<FastifyServerOptions["logger"]>;
  /** The address it will listen on. */
  readonly listenHost: string;
  /** Folder of the built client; none is served where it is missing. */
  readonly clientDir: string | undefined;
  readonly api: ApiDescription;
  readonly recognise: Recognise;
  /** Rejects when the database does not answer. */
  readonly ping: () => Promise<void>;
}

export type HttpApp = ReturnType<typeof createBare>;

/** The app before any feature: problem details, security, health, API reference, client. It does not listen yet. */
export async function createHttp(options: HttpOptions): Promise<HttpApp> {
  const app = createBare(options);
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  installClosing(app);
  installErrorHandler(app, options.recognise);
  await installSecurity(app, options.listenHost);
  await installOpenApi(app, options.api);
  await installClient(app, options.clientDir);
  installHealth(app, options.ping);
  installProblemPages(app);
  return app;
}

// for a whole request to arrive, over a slow line at the largest size
const REQUEST_LIMIT_MS = 120_000;

function createBare({ logger, recognise }: HttpOptions) {
  return Fastify({
    logger,
    bodyLimit: LIMITS.bodyBytes,
    requestTimeout: REQUEST_LIMIT_MS,
    // connections that wait for a next request close at once, those with one in work after their answer
    forceCloseConnections: "idle",
    // a request that arrives while closing is still answered, in our form, and its connection then closed
    return503OnClosing: false,
    frameworkErrors: (error, request, reply) => answer(error, recognise, request, reply),
    clientErrorHandler: answerRaw,
  }).withTypeProvider<ZodTypeProvider>();
}
