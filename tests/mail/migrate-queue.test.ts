import { expect, it } from "vitest";
import { migrateQueue } from "../../src/mail/post-office.ts";
import { runSql } from "../support/sql.ts";
import { testDatabase } from "../support/test-database.ts";

it.each([1, 2, 3])(
  "makes the queue's tables once, however many start at the same time on an empty database: %i",
  async () => {
    const test = await testDatabase("empty");
    await Promise.all(Array.from({ length: 12 }, () => migrateQueue(test.connection)));
    const { rows } = await runSql(test.connection, "select id from graphile_worker.migrations where id = 1");
    await test.drop();
    expect(rows).toHaveLength(1);
  },
);
