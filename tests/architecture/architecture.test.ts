import { describe, expect, it } from "vitest";
import { projectRoot } from "../../src/lib/project-root.ts";
import { importCircles, LAYERS, layerOf, misdirectedImports, plannerImpurities } from "./layers.ts";
import { parseModule, readModules, withoutComments } from "./modules.ts";

const ROOT = projectRoot(import.meta.dirname);
const modules = readModules(ROOT, ["src", "shared", "seed"]);
const parsed = (files: Readonly<Record<string, string>>) =>
  Object.entries(files).map(([file, text]) => parseModule(file, text));

/** Code alone: without comments and without the text inside quotes. */
const codeOf = (text: string) => withoutComments(text).replace(/"(?:[^"\\\n]|\\.)*"/g, '""');

describe("the house", () => {
  it("is seen whole", () => {
    const files = new Set(modules.map(({ file }) => file));
    for (const known of ["src/server.ts", "src/app.ts", "shared/errors.ts", "src/planner/problem.ts"])
      expect(files).toContain(known);
    expect(modules.length).toBeGreaterThan(80);
    // a server that imports nothing would mean that imports are no longer recognised
    expect(modules.find(({ file }) => file === "src/server.ts")?.files.length).toBeGreaterThan(5);
  });

  it("has ranks: every layer may import only lower ones", () => {
    for (const [name, { rank, layers }] of Object.entries(LAYERS))
      for (const below of layers)
        expect([name, below, LAYERS[below].rank < rank]).toEqual([name, below, true]);
  });

  it("imports downhill only, type imports included", () => {
    expect(misdirectedImports(modules)).toEqual([]);
  });

  it("has no circles", () => {
    expect(importCircles(modules)).toEqual([]);
  });

  it("has a planner that is arithmetic: no clock, no chance, no waiting, no memory between calls", () => {
    const planner = modules.filter(({ file }) => layerOf(file) === "planner");
    expect(planner.length).toBeGreaterThan(5);
    expect(plannerImpurities(new Map(planner.map(({ file, text }) => [file, codeOf(text)])))).toEqual([]);
  });
});

describe("a fault planted on purpose is found", () => {
  it.each([
    ["uphill", "src/lib/a.ts", 'import { x } from "../database/client.ts";'],
    ["uphill, of a type alone", "src/planner/a.ts", 'import type { X } from "../../shared/check.ts";'],
    ["uphill, of a type in an expression", "src/planner/a.ts", 'type X = import("../lib/clock.ts").Clock;'],
    ["uphill, over several lines", "src/http/a.ts", 'import {\n  x,\n  y,\n} from "../features/b/index.ts";'],
    ["uphill, passed on", "shared/a.ts", 'export * from "../src/lib/clock.ts";'],
    ["uphill, for its effect", "src/web/a.ts", 'import "../server.ts";'],
    ["from one feature into another", "src/features/a/service.ts", 'import { x } from "../b/index.ts";'],
    ["past a feature's door", "src/app.ts", 'import { x } from "./features/b/store.ts";'],
    ["of a package by the wrong layer", "src/features/a/service.ts", 'import pg from "pg";'],
    ["of a package past its door", "src/lib/clock.ts", 'import { DateTime } from "luxon";'],
    ["of node by the planner", "src/planner/a.ts", 'import path from "node:path";'],
    ["out of the house", "src/app.ts", 'import x from "../tests/support/test-app.ts";'],
  ])("an import %s", (_, file, text) => {
    expect(misdirectedImports(parsed({ [file]: text }))).toHaveLength(1);
  });

  it("but what may be imported may, and comments import nothing", () => {
    const files = {
      "src/features/a/routes.ts":
        'import { x } from "../../http/pages.ts";\nimport { y } from "./service.ts";\n',
      "src/app.ts": '// import "pg";\n/* import "pg"; */\nimport { a } from "./features/a/index.ts";',
    };
    expect(misdirectedImports(parsed(files))).toEqual([]);
  });

  it("a circle, once, wherever one enters it", () => {
    const circle = parsed({
      "src/lib/c.ts": 'import "./a.ts";',
      "src/lib/a.ts": 'import type { B } from "./b.ts";',
      "src/lib/b.ts": 'export { c } from "./c.ts";',
      "src/lib/d.ts": 'import "./a.ts";',
    });
    expect(importCircles(circle)).toEqual(["src/lib/a.ts > src/lib/b.ts > src/lib/c.ts > src/lib/a.ts"]);
  });

  it.each([
    "const now = new Date();",
    "const r = Math.random();",
    "export async function f() {}",
    "if (process.env.X) f();",
    "const p = Promise.resolve();",
    "let calls = 0;",
  ])("in the planner: %s", (text) => {
    expect(plannerImpurities(new Map([["src/planner/a.ts", codeOf(text)]]))).toHaveLength(1);
  });

  it("but words in comments and quotes are no faults", () => {
    const text =
      '// no Date here\n/** process, async */\nexport const code = "late-process";\nconst updateDates = 1;';
    expect(plannerImpurities(new Map([["src/planner/a.ts", codeOf(text)]]))).toEqual([]);
  });
});
