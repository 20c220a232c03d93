import { setTimeout as sleep } from "node:timers/promises";
import pg from "pg";

export type ListenConnection = pg.ClientConfig;

export interface ListenerDeps {
  readonly connection: ListenConnection;
  readonly channel: string;
  readonly onNotice: (payload: string) => void;
  /** Listening has begun, or begun again: what was said before was not heard. */
  readonly onGap: () => void;
}

const FIRST_PAUSE_MS = 100;
const LONGEST_PAUSE_MS = 3_000;
const ANSWER_LIMIT_MS = 5_000;

/** Listens on a channel of the database over one connection of its own, and dials again when that is lost, until closed. */
export function createListener({ connection, channel, onNotice, onGap }: ListenerDeps) {
  const stop = new AbortController();
  let line: pg.Client | undefined;
  let running: Promise<void> | undefined;
  let begun = () => {};
  const listening = new Promise<void>((resolve) => {
    begun = resolve;
  });

  /** Resolves when the line is lost, or was never had. */
  async function listenOnce(): Promise<void> {
    const client = new pg.Client({
      ...connection,
      // for whoever looks at the database's connections
      application_name: `listens to ${channel}`,
      keepAlive: true,
      connectionTimeoutMillis: ANSWER_LIMIT_MS,
      query_timeout: ANSWER_LIMIT_MS,
    });
    client.on("error", () => {}).on("notification", ({ payload = "" }) => onNotice(payload));
    const lost = Promise.race([new Promise((resolve) => client.once("end", resolve)), aborted(stop.signal)]);
    try {
      await client.connect();
      await client.query(`listen ${client.escapeIdentifier(channel)}`);
      line = client;
      begun();
      onGap();
      await lost;
    } finally {
      line = undefined;
      void client.end().catch(() => {});
    }
  }

  async function run(): Promise<void> {
    let pauseMs = FIRST_PAUSE_MS;
    while (!stop.signal.aborted) {
      const worked = await listenOnce().then(
        () => true,
        () => false,
      );
      pauseMs = worked ? FIRST_PAUSE_MS : Math.min(pauseMs * 2, LONGEST_PAUSE_MS);
      await sleep(pauseMs, undefined, { signal: stop.signal }).catch(() => {});
    }
  }

  return {
    /** Begins to listen, if it has not yet; resolves once it has listened for the first time, after a while also without. */
    async start(): Promise<void> {
      running ??= run();
      await Promise.race([listening, sleep(ANSWER_LIMIT_MS, undefined, { ref: false })]);
    },
    /** Finds out whether the line still stands, and dials again where it does not. */
    async probe(): Promise<void> {
      const client = line;
      await client?.query("select 1").catch(() => client.connection.stream.destroy());
    },
    async close(): Promise<void> {
      stop.abort();
      await running;
    },
  };
}

const aborted = (signal: AbortSignal) =>
  new Promise<void>((resolve) => signal.addEventListener("abort", () => resolve(), { once: true }));
