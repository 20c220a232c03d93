import { execFile } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { promisify } from "node:util";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { projectRoot } from "../../src/lib/project-root.ts";
import { testApp } from "../support/test-app.ts";
import { probeApp } from "./probe-app.ts";

interface Operation {
  readonly operationId: string;
  readonly summary: string;
  readonly tags: readonly string[];
  readonly responses: Readonly<Record<string, { readonly description: string }>>;
}

interface Field {
  readonly description?: string;
  readonly type?: string | readonly string[];
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly Field[];
}

/** The field itself and, where it may be one of several things, each of them. */
const formsOf = (field: Field): readonly Field[] => [field, ...(field.anyOf ?? [])];
const isFigureOrChoice = ({ type = [], enum: choices }: Field) =>
  choices !== undefined || [type].flat().some((kind) => ["number", "integer", "boolean"].includes(kind));

let whole: Awaited<ReturnType<typeof testApp>>;
let probe: Awaited<ReturnType<typeof probeApp>>;

beforeAll(async () => {
  whole = await testApp();
  probe = await probeApp();
});
afterAll(() => Promise.all([whole.close(), probe.close()]));

describe("the API reference", () => {
  it("is a valid OpenAPI 3.1 document", async () => {
    const { body } = await whole.request.get("/api/openapi.json");
    expect(body.openapi).toMatch(/^3\.1\./);
    const folder = mkdtempSync(path.join(tmpdir(), "openapi-"));
    writeFileSync(path.join(folder, "openapi.json"), JSON.stringify(body));
    const linter = path.join(projectRoot(import.meta.dirname), "node_modules/.bin/redocly");
    // the linter leaves with an error code, and so rejects, where the document breaks the standard
    await promisify(execFile)(linter, ["lint", "openapi.json", "--extends=recommended"], {
      cwd: folder,
      env: { ...process.env, REDOCLY_TELEMETRY: "off", REDOCLY_SUPPRESS_UPDATE_NOTICE: "true" },
    });
    rmSync(folder, { recursive: true });
  });

  it("says of every route what it is for, in which group, and what each answer is", async () => {
    const { body } = await whole.request.get("/api/openapi.json");
    const groups = body.tags.map(({ name }: { name: string }) => name);
    for (const [path, methods] of Object.entries<Record<string, Operation>>(body.paths))
      for (const [method, { operationId, summary, tags, responses }] of Object.entries(methods)) {
        const route = `${method} ${path}`;
        expect(operationId, route).toMatch(/^[a-z]+[A-Za-z]+$/);
        expect(summary, route).toMatch(/^\p{Lu}/u);
        expect(groups, route).toEqual(expect.arrayContaining([...tags]));
        for (const { description } of Object.values(responses))
          expect(description, route).not.toBe("Default Response");
      }
  });

  it("tells of the refusals that come before a route: nobody known, a role that may not, a body of another kind", async () => {
    const { body } = await whole.request.get("/api/openapi.json");
    const post = body.paths["/api/clubs/{club}/sections"].post.responses;
    expect(Object.keys(post)).toEqual(expect.arrayContaining(["401", "403", "413", "415"]));
    expect(post["401"].description).toContain("not-signed-in");
    const { get } = body.paths["/api/clubs/{club}/sections"];
    expect(Object.keys(get.responses)).toContain("401");
    expect(Object.keys(get.responses)).not.toContain("403");
    // what a route says itself stands beside it
    const signIn = body.paths["/api/sign-in"].post.responses;
    expect(signIn["401"].description).toContain("wrong-sign-in");
    expect(signIn["401"].description).not.toContain("not-signed-in");
  });

  it("tells of the tag that an answer with a record carries", async () => {
    const { body } = await whole.request.get("/api/openapi.json");
    const { post } = body.paths["/api/clubs/{club}/sections"];
    const { get, put } = body.paths["/api/clubs/{club}/sections/{section}"];
    expect(Object.keys(post.responses["201"].headers)).toEqual(["ETag", "Location"]);
    for (const { responses } of [get, put]) expect(Object.keys(responses["200"].headers)).toEqual(["ETag"]);
  });

  it("says what each parameter in an address names, and that a change must say which version it is of", async () => {
    const { body } = await whole.request.get("/api/openapi.json");
    const { put } = body.paths["/api/clubs/{club}/command-systems/{commandSystem}"];
    const named = Object.fromEntries(put.parameters.map((each: { name: string }) => [each.name, each]));
    expect(named.commandSystem.description).toBe("Code of the command system.");
    expect(named["If-Match"]).toMatchObject({ in: "header", required: true });
    const { put: putVersion } = body.paths["/api/clubs/{club}/timetables/{timetable}/versions/{version}"];
    expect(putVersion.parameters).toContainEqual(
      expect.objectContaining({
        name: "version",
        description: expect.stringMatching(/^Number of the version/),
      }),
    );
  });

  it("says of every figure, choice and switch what it means", async () => {
    const { body } = await whole.request.get("/api/openapi.json");
    const schemas = Object.entries<{ properties?: Record<string, Field> }>(body.components.schemas);
    const fields = schemas.flatMap(([schema, { properties = {} }]) =>
      Object.entries(properties).map(([name, field]) => ({
        name: `${schema}.${name}`,
        forms: formsOf(field),
      })),
    );
    const toExplain = fields.filter(({ forms }) => forms.some(isFigureOrChoice));
    expect(toExplain.length).toBeGreaterThan(100);
    const silent = toExplain.filter(({ forms }) =>
      forms.every(({ description }) => description === undefined),
    );
    expect(silent.map(({ name }) => name)).toEqual([]);
  });

  it("shows a sheet for each kind that comes as one", async () => {
    const { body } = await whole.request.get("/api/openapi.json");
    const sheets = Object.entries<Record<string, { requestBody: { content: unknown } }>>(body.paths).filter(
      ([path, { post }]) => path.endsWith(".csv") && post !== undefined,
    );
    expect(sheets.length).toBeGreaterThan(4);
    for (const [path, { post }] of sheets)
      expect(post?.requestBody.content, path).toMatchObject({
        "text/csv": { example: expect.stringMatching(/^code,[^\n]*\r\n\w+,/) },
      });
  });

  it("names each schema once, and none that nothing refers to", async () => {
    const { body } = await probe.request.get("/api/openapi.json");
    const text = JSON.stringify(body);
    const names = Object.keys(body.components.schemas);
    expect(names).toEqual(expect.arrayContaining(["Problem", "Probe"]));
    expect(names).not.toContain("ProbeInput");
    for (const name of names) expect(text).toContain(`"#/components/schemas/${name}"`);
  });

  it("has a body of another media type under that type", async () => {
    const { body } = await probe.request.get("/api/openapi.json");
    expect(body.paths["/api/sheet"].post.requestBody.content).toEqual({
      "text/csv": { schema: { type: "string", maxLength: 9 } },
    });
  });

  it("says which problems a route may answer with, and in which form", async () => {
    const { body } = await probe.request.get("/api/openapi.json");
    const { description, content } = body.paths["/api/probe"].post.responses["400"];
    expect(description).toMatch(/validation-failed: .* malformed-json: /);
    expect(content["application/problem+json"].schema.$ref).toBe("#/components/schemas/Problem");
  });

  it("has a page to read it on, which loads nothing from elsewhere", async () => {
    const page = await whole.request.get("/api/docs/");
    expect(page.status).toBe(200);
    expect(page.headers["content-type"]).toMatch(/^text\/html/);
    expect(page.text).not.toMatch(/(src|href)="(https?:)?\/\//);
    expect(page.text).not.toMatch(/<script(?![^>]*src=)[^>]*>\s*\S/);
  });
});
