import path from "node:path";
import type pg from "pg";
import type { TestProject } from "vitest/node";
import { migrate } from "../../src/database/migrate.ts";
import { projectRoot } from "../../src/lib/project-root.ts";
import { migrateQueue } from "../../src/mail/post-office.ts";
import { runSql } from "./sql.ts";
import { startTestServer } from "./test-server.ts";

declare module "vitest" {
  interface ProvidedContext {
    /** Reaches the run's PostgreSQL; `template` is a migrated, empty database to copy. */
    pg: { server: pg.ClientConfig; template: string };
  }
}

export const MIGRATIONS = path.join(projectRoot(import.meta.dirname), "prisma/migrations");

/** Before the first file: a server and a migrated template. After the last: the server is stopped. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await startTestServer();
  try {
    const admin = server.connection("postgres");
    await dropLeftOvers(admin);
    const template = "template_of_tests";
    await runSql(admin, `create database ${template}`);
    await migrate(server.connection(template), MIGRATIONS);
    await migrateQueue(server.connection(template));
    project.provide("pg", { server: admin, template });
  } catch (error) {
    await server.stop();
    throw error;
  }
  return server.stop;
}

/** Databases of a run that was killed before it could drop them. */
async function dropLeftOvers(admin: pg.ClientConfig): Promise<void> {
  const { rows } = await runSql<{ datname: string }>(
    admin,
    "select datname from pg_database where datname not in ('postgres', 'template0', 'template1')",
  );
  for (const { datname } of rows) await runSql(admin, `drop database "${datname}" with (force)`);
}
