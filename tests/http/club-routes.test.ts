import { afterAll, beforeAll, expect, it } from "vitest";
import { Refusal } from "../../src/lib/refusal.ts";
import { testApp } from "../support/test-app.ts";

// An app that lets nobody at any club.
let service: Awaited<ReturnType<typeof testApp>>;
let asked: string[];

beforeAll(async () => {
  service = await testApp({
    authorise: async (request, club) => {
      asked.push(`${request.method} ${club}`);
      throw new Refusal("not-found", "There is no such club.");
    },
  });
});
afterAll(() => service.close());

it("every route of the API under a club asks first, and without leave is not found, whatever is sent", async () => {
  const { body } = await service.request.get("/api/openapi.json");
  const operations = Object.entries(body.paths as Record<string, object>)
    .filter(([path]) => path.includes("{club}"))
    .flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => [method.toUpperCase(), path] as const),
    );
  expect(operations.length).toBeGreaterThan(0);
  for (const [method, path] of operations) {
    asked = [];
    const url = path.replace("{club}", "north").replaceAll(/\{\w+\}/g, "x");
    const response = await service.app.inject({ method: method as "GET", url });
    expect([method, path, response.statusCode, asked]).toEqual([method, path, 404, [`${method} north`]]);
  }
});
