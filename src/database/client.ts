import type pg from "pg";
import { ActingPg } from "./acting-adapter.ts";
import { type Prisma, PrismaClient } from "./generated/client.ts";

/** What a store is bound to: the client, or one transaction of it. */
export type Database = PrismaClient | Prisma.TransactionClient;

export type DatabaseClient = PrismaClient;

/**
 * A client over a pool of connections. The connection must fix the session's zone to UTC (as those of
 * `openDatabase` do): the driver writes instants without their offset. Error messages carry no source lines.
 */
export function createClient(connection: pg.PoolConfig): DatabaseClient {
  return new PrismaClient({ adapter: new ActingPg(connection), errorFormat: "minimal" });
}

/** Resolves when the database answers; rejects with the driver's error when it does not. */
export async function ping(database: Database): Promise<void> {
  await database.$queryRaw`select 1`;
}
