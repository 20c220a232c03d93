import pg from "pg";

/** Tells other processes which workers of this one are alive, by a lock that ends with its connection. */
export interface WorkerGuard {
  /** To be called for each worker, before it has anything to do. */
  watch(worker: string): void;
  /** Gives the jobs of workers whose process is gone back to the queue. */
  rescue(): Promise<void>;
  close(): Promise<void>;
}

const key = "hashtextextended('mail worker ' || $1, 0)";
const LOCK = `select pg_advisory_lock(${key})`;
const TRY_LOCK = `select pg_try_advisory_lock(${key}) as gone`;
const UNLOCK = `select pg_advisory_unlock(${key})`;
// a worker that has only just begun may not have its lock yet
const HELD = `select distinct locked_by as worker from graphile_worker.jobs
  where locked_by is not null and locked_at < now() - interval '10 seconds'`;
const FREE = "select graphile_worker.force_unlock_workers(array[$1::text])";
const AGAIN_AFTER_MS = 1_000;

/**
 * The queue itself gives a dead worker's job free only after four hours, since it cannot know. The database does: a
 * session-level advisory lock lives exactly as long as the process's connection.
 */
export function guardWorkers(connection: pg.ClientConfig): WorkerGuard {
  const workers = new Set<string>();
  let client: Promise<pg.Client> | undefined;
  let closed = false;

  async function connect(): Promise<pg.Client> {
    const made = new pg.Client(connection);
    made.on("error", () => {});
    made.on("end", () => lost());
    await made.connect();
    for (const worker of workers) await made.query(LOCK, [worker]);
    return made;
  }

  function lost(): void {
    client = undefined;
    if (closed) return;
    setTimeout(() => void reach().catch(() => {}), AGAIN_AFTER_MS).unref();
  }

  function reach(): Promise<pg.Client> {
    if (closed) return Promise.reject(new Error("the guard is closed"));
    client ??= connect().catch((error: unknown) => {
      lost();
      throw error;
    });
    return client;
  }

  async function rescue(): Promise<void> {
    const at = await reach();
    const { rows } = await at.query<{ worker: string }>(HELD);
    for (const { worker } of rows) {
      if (workers.has(worker)) continue;
      const answer = await at.query<{ gone: boolean }>(TRY_LOCK, [worker]);
      if (!answer.rows[0]?.gone) continue;
      await at.query(FREE, [worker]);
      await at.query(UNLOCK, [worker]);
    }
  }

  return {
    watch: (worker) => {
      workers.add(worker);
      reach()
        .then((at) => at.query(LOCK, [worker]))
        .catch(() => {}); // the next connection locks for all
    },
    rescue,
    close: async () => {
      closed = true;
      await client?.then((made) => made.end()).catch(() => {});
    },
  };
}
