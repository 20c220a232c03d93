import { randomUUID } from "node:crypto";
import type pg from "pg";
import { inject } from "vitest";
import { runSql } from "./sql.ts";

export interface TestDatabase {
  readonly connection: pg.ClientConfig;
  drop(): Promise<void>;
}

/** A database of one's own: a copy of the migrated template, or an empty one. Drop it when everything on it is closed. */
export async function testDatabase(kind: "migrated" | "empty" = "migrated"): Promise<TestDatabase> {
  const { server, template } = inject("pg");
  const name = `t_${randomUUID().replaceAll("-", "")}`;
  await runSql(server, `create database ${name} template ${kind === "migrated" ? template : "template0"}`);
  return {
    connection: { ...server, database: name },
    drop: async () => {
      await runSql(server, `drop database ${name} with (force)`);
    },
  };
}
