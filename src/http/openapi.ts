import swagger from "@fastify/swagger";
import swaggerUi from "@fastify/swagger-ui";
import { createJsonSchemaTransform, jsonSchemaTransformObject } from "fastify-type-provider-zod";
import type { HttpApp } from "./bare-app.ts";

export interface ApiDescription {
  readonly version: string;
  readonly description: string;
}

/** OpenAPI 3.1 made from the routes' schemas, at `/api/openapi.json`, with a reference page at `/api/docs`. Register it before the routes. */
export async function installOpenApi(app: HttpApp, { version, description }: ApiDescription): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: "3.1.1",
      info: { title: "Running Foreman", version, description, license: { name: "MIT", identifier: "MIT" } },
      servers: [{ url: "/" }],
    },
    transform: createJsonSchemaTransform({ skipList: ["/api/docs/*"] }),
    transformObject: (document) => dropUnreferenced(jsonSchemaTransformObject(document)),
  });
  await app.register(swaggerUi, {
    routePrefix: "/api/docs",
    uiConfig: { docExpansion: "none", tagsSorter: "alpha" },
  });
  app.get("/api/openapi.json", { schema: { hide: true } }, async (_, reply) =>
    reply
      .type("application/json; charset=utf-8")
      .serializer(JSON.stringify)
      .send(app.swagger() as never),
  );
}

type Document = ReturnType<typeof jsonSchemaTransformObject>;

/** Each named schema comes out twice, as it is sent and as it is taken; the one that nothing refers to is left out. */
function dropUnreferenced(document: Document): Document {
  const { components, ...rest } = document as { components?: { schemas?: Record<string, unknown> } };
  const schemas = components?.schemas ?? {};
  const used = new Set<string>();
  const visit = (value: unknown): void => {
    for (const [, name] of JSON.stringify(value ?? null).matchAll(/"#\/components\/schemas\/([^"]+)"/g)) {
      if (name === undefined || used.has(name)) continue;
      used.add(name);
      visit(schemas[name]);
    }
  };
  visit(rest);
  const kept = Object.entries(schemas).filter(([name]) => used.has(name));
  return { ...rest, components: { ...components, schemas: Object.fromEntries(kept) } } as Document;
}
