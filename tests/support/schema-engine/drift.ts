import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import type pg from "pg";
import { projectRoot } from "../../../src/lib/project-root.ts";
import { withSchemaEngine } from "./engine.ts";

/** The SQL that would bring the database to what the schema files say; empty when they agree. */
export async function driftSql(connection: pg.PoolConfig): Promise<string> {
  const folder = path.join(projectRoot(import.meta.dirname), "prisma");
  const files = readdirSync(folder)
    .filter((name) => name.endsWith(".prisma"))
    .sort()
    .map((name) => ({
      path: path.join(folder, name),
      content: readFileSync(path.join(folder, name), "utf8"),
    }));
  const { exitCode, stdout } = await withSchemaEngine(connection, files, (engine) =>
    engine.diff({
      from: { tag: "schemaDatasource", files, configDir: folder },
      to: { tag: "schemaDatamodel", files },
      script: true,
      exitCode: true,
      filters: { externalTables: [], externalEnums: [] },
    }),
  );
  return exitCode === 0 ? "" : (stdout ?? "");
}
