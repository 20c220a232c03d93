import supertest from "supertest";
import { z } from "zod";
import { createHttp, type HttpOptions } from "../../src/http/create-http.ts";
import { pageOf, pageQuery, parseCursor, toPage } from "../../src/http/pages.ts";
import { entityTag, readPrecondition } from "../../src/http/preconditions.ts";
import { refusalResponses } from "../../src/http/problem-details.ts";
import { assertCurrent } from "../../src/lib/precondition.ts";
import { Refusal } from "../../src/lib/refusal.ts";

const body = z
  .strictObject({
    name: z.string().min(1).max(5),
    currentMa: z.int().min(0),
    "odd/na~me": z.boolean().optional(),
    kind: z.enum(["rake", "train"]).optional(),
    few: z.array(z.string()).min(1).optional(),
    inner: z.array(z.strictObject({ n: z.number().gt(0) })).optional(),
    code: z.string().regex(/^x/, "Start it with x.").optional(),
  })
  .meta({ id: "Probe" });

const NUMBERS = Array.from({ length: 7 }, (_, at) => at + 1);

/** What every feature stands on, with routes that do nothing but show it. */
export async function probeApp(overrides: Partial<HttpOptions> = {}) {
  const app = await createHttp({
    logger: false,
    listenHost: "127.0.0.1",
    trustedProxies: [],
    clientDir: undefined,
    api: { version: "1.2.3", description: "Probe." },
    recognise: () => undefined,
    ping: async () => {},
    ...overrides,
  });
  app.post(
    "/api/probe",
    { schema: { body, response: { 200: body, ...refusalResponses("validation-failed", "malformed-json") } } },
    async (request) => request.body,
  );
  app.post(
    "/api/sheet",
    { schema: { body: { content: { "text/csv": { schema: z.string().max(9) } } } as never } },
    async () => ({}),
  );
  app.put("/api/probe", async (request, reply) => {
    assertCurrent(readPrecondition(request), 3);
    return reply.header("etag", entityTag(4)).send({});
  });
  app.get(
    "/api/numbers",
    { schema: { querystring: pageQuery, response: { 200: pageOf(z.int()) } } },
    async ({ query: { limit, cursor } }) => {
      const [after] = parseCursor(cursor, z.tuple([z.int()])) ?? [0];
      const rows = NUMBERS.filter((n) => n > after).slice(0, limit + 1);
      return toPage(
        rows,
        limit,
        (n) => [n],
        (n) => n,
      );
    },
  );
  app.get("/api/leak", { schema: { response: { 200: z.object({ shown: z.string() }) } } }, async () => ({
    shown: "yes",
    hidden: "secret",
  }));
  app.get("/api/mistake", async () => {
    throw new Error("the password is in here");
  });
  app.get("/api/broken-answer", { schema: { response: { 200: z.object({ n: z.int() }) } } }, async () => ({
    n: 1.5,
  }));
  app.get("/api/refusal", { schema: { response: { 409: z.object({ other: z.string() }) } } }, async () => {
    throw new Refusal("conflict", "Two trains want one road.");
  });
  await app.ready();
  return { app, request: supertest(app.server), close: () => app.close() };
}
