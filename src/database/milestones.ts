import pg from "pg";

/**
 * Does `work` once in the life of a database, whoever else starts on it at the same time; returns whether it was done
 * now. If the process dies between the end of `work` and the note of it, `work` runs again: it must then do nothing
 * harmful.
 */
export async function once(
  connection: pg.ClientConfig,
  name: string,
  work: () => Promise<void>,
): Promise<boolean> {
  const client = new pg.Client(connection);
  client.on("error", () => {}); // the statement in hand rejects as well
  await client.connect();
  try {
    await client.query("select pg_advisory_lock(hashtextextended($1, 0))", [`milestone ${name}`]);
    const { rowCount } = await client.query("select from milestones where name = $1", [name]);
    if (rowCount) return false;
    await work();
    await client.query("insert into milestones (name) values ($1)", [name]);
    return true;
  } finally {
    await client.end().catch(() => {});
  }
}
