import { EventEmitter } from "node:events";
import { Logger, parseCronItems, run, runMigrations, type WorkerEvents } from "graphile-worker";
import pg from "pg";
import { guardWorkers } from "./guard-workers.ts";
import { SEND_TASK } from "./mailer.ts";
import { type Query, sendMail } from "./send-mail.ts";
import type { Transport } from "./transport.ts";

/** Something to be done every so often by one of all processes, such as looking for what to remind of. */
export interface Chore {
  readonly name: string;
  /** As crontab(5) writes it, UTC. */
  readonly every: string;
  do(): Promise<void>;
}

export interface PostOffice {
  /** Lets mails in hand go out, and stops. */
  close(): Promise<void>;
}

export interface PostOfficeOptions {
  readonly connection: pg.ClientConfig;
  readonly transport: Transport;
  readonly chores: readonly Chore[];
  /** Told what went wrong in a line. */
  readonly warn: (message: string) => void;
}

const AT_ONCE = 2;
const RESCUE_EVERY_MS = 5_000;

/** Makes the queue's own tables; harmless when they are there. Of two processes at once one waits for the other. */
export async function migrateQueue(connection: pg.ClientConfig): Promise<void> {
  const pool = createPool(connection);
  const guard = new pg.Client(connection);
  guard.on("error", () => {}); // the statement in hand rejects as well
  try {
    await guard.connect();
    await guard.query("select pg_advisory_lock(hashtextextended('mail queue', 0))");
    await runMigrations({ pgPool: pool, logger: silent });
  } finally {
    await pool.end();
    await guard.end().catch(() => {}); // and with it its lock
  }
}

/** Sends queued mails and does chores, together with the other processes on the same database. */
export async function openPostOffice({
  connection,
  transport,
  chores,
  warn,
}: PostOfficeOptions): Promise<PostOffice> {
  const pool = createPool(connection);
  const guard = guardWorkers(connection);
  const events: WorkerEvents = new EventEmitter();
  events.on("worker:create", ({ worker }) => guard.watch(worker.workerId));
  const runner = await run({
    pgPool: pool,
    concurrency: AT_ONCE,
    noHandleSignals: true,
    logger: new Logger(() => (level, message) => {
      if (level === "error" || level === "warning") warn(message);
    }),
    events,
    taskList: {
      [SEND_TASK]: (payload, { query }) =>
        sendMail(query as unknown as Query, transport, (payload as { mail: string }).mail),
      ...Object.fromEntries(chores.map((chore) => [chore.name, () => chore.do()])),
    },
    parsedCronItems: parseCronItems(chores.map(({ name, every }) => ({ task: name, match: every }))),
  });
  const rescues = setInterval(() => {
    guard.rescue().catch((error: unknown) => warn(`The mail queue was not looked after: ${error}`));
  }, RESCUE_EVERY_MS);
  return {
    close: async () => {
      clearInterval(rescues);
      await runner.stop();
      await guard.close();
      await pool.end();
      transport.close();
    },
  };
}

const silent = new Logger(() => () => {});

function createPool(connection: pg.ClientConfig): pg.Pool {
  const pool = new pg.Pool({ ...connection, max: AT_ONCE + 3 });
  pool.on("error", () => {}); // a lost idle connection is replaced by the next query
  return pool;
}
