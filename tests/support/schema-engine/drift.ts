import { readFileSync } from "node:fs";
import path from "node:path";
import type pg from "pg";
import { projectRoot } from "../../../src/lib/project-root.ts";
import { withSchemaEngine } from "./engine.ts";

/** The SQL that would bring the database to what schema.prisma says; empty when they agree. */
export async function driftSql(connection: pg.PoolConfig): Promise<string> {
  const file = path.join(projectRoot(import.meta.dirname), "prisma/schema.prisma");
  const content = readFileSync(file, "utf8");
  const files = [{ path: file, content }];
  const { exitCode, stdout } = await withSchemaEngine(connection, content, (engine) =>
    engine.diff({
      from: { tag: "schemaDatasource", files, configDir: path.dirname(file) },
      to: { tag: "schemaDatamodel", files },
      script: true,
      exitCode: true,
      filters: { externalTables: [], externalEnums: [] },
    }),
  );
  return exitCode === 0 ? "" : (stdout ?? "");
}
