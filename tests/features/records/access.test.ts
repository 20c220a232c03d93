import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { ClubAction } from "../../../src/http/authorise.ts";
import { Refusal } from "../../../src/lib/refusal.ts";
import { testApp } from "../../support/test-app.ts";
import { makeClub } from "../example-club.ts";

interface Operation {
  readonly operationId?: string;
  readonly summary?: string;
  readonly description?: string;
  readonly tags?: readonly string[];
  readonly requestBody?: { readonly content: Readonly<Record<string, { readonly example?: unknown }>> };
  readonly responses: Readonly<Record<string, unknown>>;
}

type Paths = Readonly<Record<string, Readonly<Record<string, Operation>>>>;

/** Who asked for what; strangers are turned away once the door is shut. */
const asked: { club: string; action: ClubAction }[] = [];
let shut = false;
let app: Awaited<ReturnType<typeof testApp>>;
let operations: { method: string; path: string; operation: Operation }[];

beforeAll(async () => {
  app = await testApp({
    authorise: async (_, club, action) => {
      asked.push({ club, action });
      if (shut) throw new Refusal("not-found", `There is no club ${club}.`);
    },
  });
  await makeClub(app, "north");
  shut = true;
  const { body } = await app.request.get("/api/openapi.json").expect(200);
  operations = Object.entries(body.paths as Paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({ method, path, operation })),
  );
});
afterAll(() => app.close());

const ofClubs = () => operations.filter(({ path }) => path.includes("{club}"));

it("there are the routes of seventeen collections, of clubs, versions, documents and sheets", () => {
  expect(ofClubs().length).toBeGreaterThan(100);
});

it("whoever may not is turned away from every route of a club as if it were not there", async () => {
  const methods = { get: "get", post: "post", put: "put", delete: "delete" } as const;
  for (const { method, path } of ofClubs()) {
    asked.length = 0;
    const url = path
      .replace("{club}", "north")
      .replace("{version}", "2")
      .replaceAll(/\{\w+\}/g, "x");
    const response = await app.request[methods[method as keyof typeof methods]](url).set("if-match", "*");
    expect([method, path, response.status, response.body.code]).toEqual([method, path, 404, "not-found"]);
    const action = method === "get" || path.endsWith("/check") ? "read" : "change";
    expect([path, asked]).toEqual([path, [{ club: "north", action }]]);
  }
});

describe("the API reference", () => {
  it("names, sums up and files every route, and no name comes twice", () => {
    for (const { path, operation } of ofClubs()) {
      expect([
        path,
        operation.tags?.length,
        Boolean(operation.summary),
        Boolean(operation.description),
      ]).toEqual([path, 1, true, true]);
    }
    const names = operations.flatMap(({ operation }) => operation.operationId ?? []);
    expect(new Set(names).size).toBe(names.length);
    expect(ofClubs().every(({ operation }) => operation.operationId)).toBe(true);
  });

  it("shows a body for every route that takes JSON", () => {
    for (const { path, operation } of ofClubs()) {
      const json = operation.requestBody?.content["application/json"];
      if (json) expect([path, json.example]).toEqual([path, expect.anything()]);
    }
  });

  it("says of every change of a record what it answers to a missing and a stale version", () => {
    const changes = ofClubs().filter(({ method }) => method === "put" || method === "delete");
    expect(changes.length).toBeGreaterThan(36);
    for (const { path, operation } of changes)
      expect([path, Object.keys(operation.responses)]).toEqual([
        path,
        expect.arrayContaining(["400", "404", "409", "412", "428"]),
      ]);
  });
});
