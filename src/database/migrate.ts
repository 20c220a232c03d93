import { createHash, randomUUID } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import pg from "pg";
import { StartupError } from "../lib/startup-error.ts";

interface Migration {
  readonly name: string;
  readonly sql: string;
  readonly checksum: string;
}

// the number Prisma's own tools lock, so that neither runs while the other does
const MIGRATION_LOCK = 72_707_369;

// Prisma's own table, so that its tools can read what happened here
const HISTORY_TABLE = `create table if not exists "_prisma_migrations" (
  "id" varchar(36) primary key not null,
  "checksum" varchar(64) not null,
  "finished_at" timestamptz,
  "migration_name" varchar(255) not null,
  "logs" text,
  "rolled_back_at" timestamptz,
  "started_at" timestamptz not null default now(),
  "applied_steps_count" integer not null default 0
)`;

const RECORD = `insert into "_prisma_migrations"
  (id, checksum, migration_name, started_at, finished_at, applied_steps_count)
  values ($1, $2, $3, now(), clock_timestamp(), 1)`;

/**
 * Applies the folders of `directory` that the database has not seen, in the order of their names, each in one
 * transaction. Two processes may call this at once: one waits for the other. Returns the names applied.
 * @throws StartupError when the history in the database and the folders disagree
 */
export async function migrate(connection: pg.ClientConfig, directory: string): Promise<readonly string[]> {
  const client = new pg.Client(connection);
  client.on("error", () => {}); // the statement in hand rejects as well
  await client.connect();
  try {
    await client.query("select pg_advisory_lock($1::bigint)", [MIGRATION_LOCK]);
    await client.query(HISTORY_TABLE);
    const pending = findPending(readMigrations(directory), await readHistory(client));
    for (const migration of pending) await apply(client, migration);
    return pending.map(({ name }) => name);
  } finally {
    await client.end().catch(() => {});
  }
}

function readMigrations(directory: string): readonly Migration[] {
  return readdirSync(directory, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => {
      const sql = readFileSync(path.join(directory, name, "migration.sql"), "utf8");
      return { name, sql, checksum: createHash("sha256").update(sql).digest("hex") };
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

async function readHistory(client: pg.Client): Promise<ReadonlyMap<string, string>> {
  const { rows } = await client.query<{ migration_name: string; checksum: string }>(
    `select migration_name, checksum from "_prisma_migrations" where finished_at is not null and rolled_back_at is null`,
  );
  return new Map(rows.map((row) => [row.migration_name, row.checksum]));
}

function findPending(
  migrations: readonly Migration[],
  history: ReadonlyMap<string, string>,
): readonly Migration[] {
  const known = new Set(migrations.map(({ name }) => name));
  const foreign = [...history.keys()].find((name) => !known.has(name));
  if (foreign !== undefined)
    throw new StartupError(
      `The database was migrated by a newer version (${foreign}): start that version, or restore a backup made before.`,
    );
  const edited = migrations.find(({ name, checksum }) => history.has(name) && history.get(name) !== checksum);
  if (edited)
    throw new StartupError(
      `Migration ${edited.name} was edited after this database applied it: put the file back as it was and add a new migration.`,
    );
  return migrations.filter(({ name }) => !history.has(name));
}

async function apply(client: pg.Client, { name, sql, checksum }: Migration): Promise<void> {
  await client.query("begin");
  try {
    await client.query(sql);
    await client.query(RECORD, [randomUUID(), checksum, name]);
    await client.query("commit");
  } catch (cause) {
    await client.query("rollback").catch(() => {});
    throw new StartupError(
      `Migration ${name} failed and left nothing behind: ${cause instanceof Error ? cause.message : cause}`,
      { cause },
    );
  }
}
