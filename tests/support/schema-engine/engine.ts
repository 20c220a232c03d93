import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { bindMigrationAwareSqlAdapterFactory } from "@prisma/driver-adapter-utils";
import type { SchemaEngine } from "@prisma/schema-engine-wasm/schema_engine_bg";
import type pg from "pg";
import { migrationAdapter } from "./migration-adapter.ts";

interface EngineModule {
  readonly SchemaEngine: {
    new: (schema: object, log: () => void, adapter: object) => Promise<SchemaEngine>;
  };
  __wbg_set_wasm(exports: WebAssembly.Exports): void;
}

const ENGINE = "@prisma/schema-engine-wasm/schema_engine_bg";

/** Lends Prisma's schema engine on a database and takes it back with every connection it made closed. */
export async function withSchemaEngine<T>(
  connection: pg.PoolConfig,
  files: readonly { readonly path: string; readonly content: string }[],
  use: (engine: SchemaEngine) => Promise<T>,
): Promise<T> {
  const { SchemaEngine } = await engineModule();
  const { factory, close } = migrationAdapter(connection);
  const bound = bindMigrationAwareSqlAdapterFactory(factory);
  let engine: SchemaEngine | undefined;
  try {
    const datamodels = files.map(({ path, content }) => [path, content]);
    engine = await SchemaEngine.new({ datamodels }, () => {}, bound);
    return await use(engine);
  } catch (error) {
    throw realCause(error, bound) ?? error;
  } finally {
    engine?.free();
    // the engine's advisory lock lives as long as its connection does
    await close();
  }
}

// once a process: the glue module keeps the memory of one instance
let loaded: Promise<EngineModule> | undefined;

function engineModule(): Promise<EngineModule> {
  loaded ??= loadEngine();
  return loaded;
}

async function loadEngine(): Promise<EngineModule> {
  // where the engine's Rust side reports a panic
  Object.assign(globalThis, {
    PRISMA_WASM_PANIC_REGISTRY: { set_message: (message: string) => console.error(message) },
  });
  const glue: EngineModule = await import(ENGINE);
  const file = createRequire(import.meta.url)
    .resolve(ENGINE)
    .replace(/\.js$/, ".wasm");
  const { instance } = await WebAssembly.instantiate(readFileSync(file), {
    "./schema_engine_bg.js": glue as unknown as WebAssembly.ModuleImports,
  });
  glue.__wbg_set_wasm(instance.exports);
  (instance.exports.__wbindgen_start as () => void)();
  return glue;
}

/** The engine says only "External error id#3"; the driver's own error waits in a registry under that number. */
function realCause(error: unknown, bound: object): Error | undefined {
  const id = /External error id#(\d+)/.exec(error instanceof Error ? error.message : "")?.[1];
  if (id === undefined) return undefined;
  const { errorRegistry } = bound as {
    errorRegistry?: { consumeError(id: number): { error: unknown } | undefined };
  };
  const cause = errorRegistry?.consumeError(Number(id))?.error;
  return cause === undefined ? undefined : new Error(`schema engine: ${String(cause)}`, { cause });
}
