import type pg from "pg";
import { createClient, type DatabaseClient } from "../../src/database/client.ts";

/**
 * A client that lets somebody else work right after it has read the first list of `model` records: what a person may do
 * between two steps of a request, brought about each time.
 */
export function editMeanwhile(connection: pg.ClientConfig, model: string) {
  let edit: (() => Promise<unknown>) | null = null;
  const client = createClient(connection);
  const database = client.$extends({
    query: {
      $allModels: {
        async findMany({ model: read, args, query }) {
          const found = await query(args);
          const now = read === model ? edit : null;
          if (now !== null) {
            edit = null;
            await now();
          }
          return found;
        },
      },
    },
  }) as unknown as DatabaseClient;
  return {
    database,
    /** Whether the last edit that was to come has come. */
    isDone: () => edit === null,
    once(work: () => Promise<unknown>) {
      edit = work;
    },
    close: () => client.$disconnect(),
  };
}
