import { appendFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { migrate } from "../../src/database/migrate.ts";
import { MIGRATIONS } from "../support/database-setup.ts";
import { driftSql } from "../support/schema-engine/drift.ts";
import { runSql } from "../support/sql.ts";
import { type TestDatabase, testDatabase } from "../support/test-database.ts";

let database: TestDatabase;
let folder: string;

beforeEach(async () => {
  database = await testDatabase("empty");
  folder = mkdtempSync(path.join(tmpdir(), "migrations-"));
});

afterEach(async () => {
  await database.drop();
  rmSync(folder, { recursive: true });
});

function write(name: string, sql: string): string {
  mkdirSync(path.join(folder, name), { recursive: true });
  const file = path.join(folder, name, "migration.sql");
  writeFileSync(file, sql);
  return file;
}

const tables = async () =>
  (
    await runSql<{ name: string }>(
      database.connection,
      "select tablename as name from pg_tables where schemaname = 'public' and tablename not like '\\_%' order by 1",
    )
  ).rows.map(({ name }) => name);

describe("the project's own migrations", () => {
  it("arrive at exactly what schema.prisma says", async () => {
    await migrate(database.connection, MIGRATIONS);
    expect(await driftSql(database.connection)).toBe("");
  });

  it("are seen not to, when a column is missing", async () => {
    await migrate(database.connection, MIGRATIONS);
    await runSql(database.connection, "alter table milestones drop column reached_at");
    expect(await driftSql(database.connection)).toMatch(
      /ADD COLUMN\s+"reached_at" TIMESTAMPTZ\(3\) NOT NULL/,
    );
  });
});

describe("migrating", () => {
  it("applies folders in the order of their names, and only once", async () => {
    write("2_second", "alter table a add column n int");
    write("1_first", "create table a ()");
    expect(await migrate(database.connection, folder)).toEqual(["1_first", "2_second"]);
    expect(await migrate(database.connection, folder)).toEqual([]);
  });

  it("leaves nothing of a migration that fails, keeps those before it, and goes on once it is mended", async () => {
    write("1_first", "create table a ()");
    write("2_second", "create table b (); create table b ()");
    await expect(migrate(database.connection, folder)).rejects.toThrow(/Migration 2_second failed/);
    expect(await tables()).toEqual(["a"]);
    write("2_second", "create table b ()");
    expect(await migrate(database.connection, folder)).toEqual(["2_second"]);
  });

  it("survives quoted semicolons and dollar-quoted bodies", async () => {
    write("1_first", "create table a (t text default ';'); do $$ begin perform 1; perform 2; end $$;");
    expect(await migrate(database.connection, folder)).toEqual(["1_first"]);
  });

  it("refuses a migration edited after it was applied", async () => {
    const file = write("1_first", "create table a ()");
    await migrate(database.connection, folder);
    appendFileSync(file, " -- edited");
    await expect(migrate(database.connection, folder)).rejects.toThrow(/1_first was edited/);
  });

  it("refuses a database that knows a migration it does not", async () => {
    write("1_first", "create table a ()");
    await migrate(database.connection, folder);
    rmSync(path.join(folder, "1_first"), { recursive: true });
    await expect(migrate(database.connection, folder)).rejects.toThrow(/newer version \(1_first\)/);
  });

  it("lets one of two processes work and the other wait", async () => {
    write("1_first", "select pg_sleep(0.2); create table a ()");
    const applied = await Promise.all([1, 2].map(() => migrate(database.connection, folder)));
    expect(applied.toSorted((a, b) => a.length - b.length)).toEqual([[], ["1_first"]]);
  });
});
