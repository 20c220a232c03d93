import { randomUUID } from "node:crypto";
import { PrismaPg } from "@prisma/adapter-pg";
import {
  ColumnTypeEnum,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
  type SqlQuery,
  type SqlResultSet,
} from "@prisma/driver-adapter-utils";
import pg from "pg";

interface Io {
  readonly fields: readonly { readonly dataTypeID: number }[];
}

/** What lies beneath the adapter's public face. */
interface Inner {
  performIO(query: SqlQuery): Promise<Io>;
  queryRaw(query: SqlQuery): Promise<SqlResultSet>;
  onError(error: unknown): never;
}

// the one-byte "char" of PostgreSQL's catalogues, and text (pg_type.oid)
const CHAR = 18;
const TEXT = 25;

/**
 * The PostgreSQL adapter with what the schema engine needs and the stock one lacks: "char" columns can be read, scripts
 * run whole (so `$$` bodies survive and a failure leaves nothing), and the shadow database is really dropped.
 */
export function migrationAdapter(connection: pg.PoolConfig) {
  const pools: pg.Pool[] = [];
  const open = async (config: pg.PoolConfig) => {
    const pool = new pg.Pool({ ...config, max: 1 });
    pool.on("error", () => {});
    pools.push(pool);
    return { pool, adapter: repair(await new PrismaPg(pool).connect(), pool) };
  };
  const factory: SqlMigrationAwareDriverAdapterFactory = {
    provider: "postgres",
    adapterName: "@prisma/adapter-pg",
    connect: async () => (await open(connection)).adapter,
    connectToShadowDb: async () => {
      const database = `shadow_${randomUUID()}`;
      const admin = new pg.Client(connection);
      await admin.connect();
      await admin.query(`create database "${database}"`);
      const { pool, adapter } = await open({ ...connection, database });
      adapter.dispose = async () => {
        await pool.end();
        await admin.query(`drop database if exists "${database}" with (force)`);
        await admin.end();
      };
      return adapter;
    },
  };
  return { factory, close: () => Promise.all(pools.map((pool) => pool.end().catch(() => {}))) };
}

function repair(adapter: SqlDriverAdapter, pool: pg.Pool): SqlDriverAdapter {
  const inner = adapter as unknown as Inner;
  const stock = Object.getPrototypeOf(Object.getPrototypeOf(adapter)) as Inner;
  adapter.queryRaw = async (query) => {
    const io = await inner.performIO(query);
    const readable = io.fields.map((field) =>
      field.dataTypeID === CHAR ? { ...field, dataTypeID: TEXT } : field,
    );
    const answered = Object.create(adapter, {
      performIO: { value: async () => ({ ...io, fields: readable }) },
    });
    const result = await stock.queryRaw.call(answered, query);
    const columnTypes = result.columnTypes.map((type, at) =>
      io.fields[at]?.dataTypeID === CHAR ? ColumnTypeEnum.Character : type,
    );
    return { ...result, columnTypes };
  };
  adapter.executeScript = async (script) => {
    await pool.query(script).catch((error) => inner.onError(error));
  };
  return adapter;
}
