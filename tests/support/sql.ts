import pg from "pg";

/** One statement on a connection of its own, past the client under test. */
export async function runSql<Row extends pg.QueryResultRow>(
  connection: pg.ClientConfig,
  sql: string,
  values: readonly unknown[] = [],
): Promise<pg.QueryResult<Row>> {
  const client = new pg.Client(connection);
  client.on("error", () => {});
  await client.connect();
  try {
    return await client.query<Row>(sql, [...values]);
  } finally {
    await client.end();
  }
}
