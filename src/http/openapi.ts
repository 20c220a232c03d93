import swagger from "@fastify/swagger";
import swaggerUi from "@fastify/swagger-ui";
import type { RouteOptions } from "fastify";
import { createJsonSchemaTransform, jsonSchemaTransformObject } from "fastify-type-provider-zod";
import type { z } from "zod";
import { describeAnswers } from "./answer-texts.ts";
import { API_TAGS } from "./api-guide.ts";
import type { HttpApp } from "./bare-app.ts";
import { createBodyExamples } from "./body-examples.ts";
import { SIGN_IN_COOKIE } from "./cookies.ts";
import { describeParameters } from "./parameter-texts.ts";
import { dropSafeBounds } from "./plain-integers.ts";
import { tidySchemaNames } from "./schema-names.ts";
import { withUsualRefusals } from "./usual-refusals.ts";

export interface ApiDescription {
  readonly version: string;
  readonly description: string;
}

/** OpenAPI 3.1 made from the routes' schemas, at `/api/openapi.json`, with a reference page at `/api/docs`. Register it before the routes. */
export async function installOpenApi(app: HttpApp, { version, description }: ApiDescription): Promise<void> {
  const examples = createBodyExamples();
  await app.register(swagger, {
    openapi: {
      openapi: "3.1.1",
      info: { title: "Running Foreman", version, description, license: { name: "MIT", identifier: "MIT" } },
      servers: [{ url: "/" }],
      tags: API_TAGS.map((tag) => ({ ...tag })),
      components: { securitySchemes: SCHEMES },
      security: [{ token: [] }, { cookie: [] }],
    },
    transform: (route) => {
      examples.note(route.route.method, route.url, route.schema?.body as z.ZodType | undefined);
      const response = withUsualRefusals(route.route, route.schema?.response as object | undefined);
      const told = { ...route, schema: { ...route.schema, response } } as typeof route;
      return openToAll(route.route) ? withoutSecurity(transform(told)) : transform(told);
    },
    transformObject: (document) => {
      const tidy = tidySchemaNames(jsonSchemaTransformObject(document));
      return describeParameters(describeAnswers(examples.putInto(dropSafeBounds(tidy))));
    },
  });
  await app.register(swaggerUi, {
    routePrefix: "/api/docs",
    uiConfig: { docExpansion: "none" },
  });
  app.get("/api/openapi.json", { schema: { hide: true } }, async (_, reply) =>
    reply
      .type("application/json; charset=utf-8")
      .serializer(JSON.stringify)
      .send(app.swagger() as never),
  );
}

const SCHEMES = {
  token: {
    type: "http",
    scheme: "bearer",
    description: "A personal access token, made on the page of one's account.",
  },
  cookie: {
    type: "apiKey",
    in: "cookie",
    name: SIGN_IN_COOKIE,
    description: "What signing in sets; for pages of the service's own.",
  },
} as const;

/** What is not of the API, or says so itself, may be used by anyone. */
const openToAll = ({ url, config }: RouteOptions) => !url.startsWith("/api/") || config?.access === "public";

const withoutSecurity = <T extends { schema: object }>({ schema, ...rest }: T) => ({
  ...rest,
  schema: { ...schema, security: [] },
});

const transformPlain = createJsonSchemaTransform({ skipList: ["/api/docs/*"] });

/** Bodies of a stated media type, `{ content: { "text/csv": { schema } } }`, which the library takes only of responses. */
const transform: typeof transformPlain = (route) => {
  const { body, ...rest } = (route.schema ?? {}) as { body?: { content?: MediaTypes } };
  if (body?.content === undefined) return transformPlain(route);
  const toJson = (schema: unknown) =>
    transformPlain({ ...route, schema: schema as typeof route.schema }).schema;
  const content = Object.entries(body.content).map(([type, { schema }]) => [
    type,
    { schema: toJson({ body: schema }).body },
  ]);
  return { url: route.url, schema: { ...toJson(rest), body: { content: Object.fromEntries(content) } } };
};

type MediaTypes = Readonly<Record<string, { readonly schema: unknown }>>;
