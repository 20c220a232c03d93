import type { FastifyServerOptions } from "fastify";
import { serializerCompiler } from "fastify-type-provider-zod";
import { createBareApp, type HttpApp } from "./bare-app.ts";
import { installClosing } from "./closing.ts";
import { installCookies } from "./cookies.ts";
import { installErrorHandler, type Recognise } from "./error-handler.ts";
import { installHealth } from "./health.ts";
import { installJsonBody } from "./json-body.ts";
import { type ApiDescription, installOpenApi } from "./openapi.ts";
import { installProblemPages } from "./problem-pages.ts";
import { installSecurity } from "./security.ts";
import { installClient } from "./static-client.ts";
import { validatorCompiler } from "./validator.ts";

export type { HttpApp };

export interface HttpOptions {
  readonly logger: NonNullable<FastifyServerOptions["logger"]>;
  /** The address it will listen on. */
  readonly listenHost: string;
  /** Folder of the built client; none is served where it is missing. */
  readonly clientDir: string | undefined;
  readonly api: ApiDescription;
  readonly recognise: Recognise;
  readonly trustedProxies: readonly string[];
  /** Rejects when the database does not answer. */
  readonly ping: () => Promise<void>;
}

/** The app before any feature: problem details, security, health, API reference, client. It does not listen yet. */
export async function createHttp(options: HttpOptions): Promise<HttpApp> {
  const app = createBareApp(options);
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  installClosing(app);
  installErrorHandler(app, options.recognise);
  installJsonBody(app);
  await installSecurity(app, options.listenHost);
  await installCookies(app);
  await installOpenApi(app, options.api);
  await installClient(app, options.clientDir);
  installHealth(app, options.ping);
  installProblemPages(app);
  return app;
}
