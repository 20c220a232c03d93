import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { localActor } from "../../../src/http/actor.ts";
import { memberOf } from "../../support/actors.ts";
import { testApp } from "../../support/test-app.ts";
import { makeClub } from "../example-club.ts";

interface Operation {
  readonly operationId?: string;
  readonly summary?: string;
  readonly description?: string;
  readonly tags?: readonly string[];
  readonly parameters?: readonly { readonly name: string }[];
  readonly requestBody?: { readonly content: Readonly<Record<string, { readonly example?: unknown }>> };
  readonly responses: Readonly<Record<string, unknown>>;
}

type Paths = Readonly<Record<string, Readonly<Record<string, Operation>>>>;

/** The local user, who may do everything, until someone else is put here. */
let actor = localActor;
let app: Awaited<ReturnType<typeof testApp>>;
let operations: { method: string; path: string; operation: Operation }[];

beforeAll(async () => {
  app = await testApp({ authenticate: async () => actor });
  await makeClub(app, "north");
  const { body } = await app.request.get("/api/openapi.json").expect(200);
  operations = Object.entries(body.paths as Paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({ method, path, operation })),
  );
});
afterEach(() => {
  actor = localActor;
});
afterAll(() => app.close());

const ofClubs = () => operations.filter(({ path }) => path.includes("{club}"));

it("there are the routes of seventeen collections, of clubs, versions, documents and sheets", () => {
  expect(ofClubs().length).toBeGreaterThan(100);
});

const METHODS = { get: "get", post: "post", put: "put", delete: "delete" } as const;

function ask({ method, path }: { method: string; path: string }) {
  const url = path
    .replace("{club}", "north")
    .replace("{version}", "2")
    .replaceAll(/\{\w+\}/g, "x");
  return app.request[METHODS[method as keyof typeof METHODS]](url).set("if-match", "*");
}

it("members of another club are turned away from every route of a club as if it were not there", async () => {
  actor = memberOf("south", "secretary");
  for (const route of ofClubs()) {
    const { status, body } = await ask(route);
    expect([route.path, status]).toEqual([route.path, 404]);
    expect(body.detail).toMatch(/^There is no club north\./);
  }
});

/** Posts that compute and store nothing: whoever may read may ask them. */
const COMPUTED =
  /\/(check|try|effects|selector-schedule|wiring|both-ways|most-trains|compare-readings|columns)$/;

it("one without a role may change no record of the club", async () => {
  actor = memberOf("north", "member");
  // what members do for themselves, and what is not the records', is looked at with those features
  const others = new Set(["booking", "claims", "night"]);
  const changes = ofClubs().filter(
    ({ method, path, operation }) =>
      method !== "get" && !COMPUTED.test(path) && !others.has(operation.tags?.[0] ?? ""),
  );
  for (const route of changes) {
    const { status, body } = await ask(route);
    expect([route.method, route.path, status, body.code]).toEqual([
      route.method,
      route.path,
      403,
      "not-permitted",
    ]);
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
    const changes = ofClubs().filter(
      ({ method, operation }) =>
        (method === "put" || method === "delete") &&
        operation.parameters?.some(({ name }) => name === "If-Match"),
    );
    expect(changes.length).toBeGreaterThan(36);
    for (const { path, operation } of changes)
      expect([path, Object.keys(operation.responses)]).toEqual([
        path,
        expect.arrayContaining(["400", "404", "409", "412", "428"]),
      ]);
  });
});
