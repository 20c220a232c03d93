import path from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import pg from "pg";
import { StartupError } from "../../lib/startup-error.ts";
import { findBinaries } from "./binaries.ts";
import { clusterConnection, describeCluster, initialiseCluster } from "./cluster.ts";
import { type Postmaster, runPostmaster, type ServerSettings, stopPostmaster } from "./postmaster.ts";
import { serverAccount } from "./server-account.ts";

export interface BundledServer {
  readonly pid: number;
  readonly adopted: boolean;
  /** How to reach one of its databases. */
  connection(database: string): pg.ClientConfig;
  /** Stops PostgreSQL and waits until it is gone. */
  stop(): Promise<void>;
}

export interface BundledServerOptions {
  readonly settings?: ServerSettings;
  /** False skips flushing a fresh data folder to disk: for data that may be lost. */
  readonly sync?: boolean;
  /** How long to wait for an owner that was just killed to be forgotten. */
  readonly patienceMs?: number;
}

/** The folder has a living owner; that one's server was left alone. */
export class FolderInUse extends StartupError {}

// any number that nobody else uses in this server's own `postgres` database
const OWNER_LOCK = 72_707_368;
const OWNER_POLL_MS = 100;

/**
 * Starts the packaged PostgreSQL on `folder`, which it alone uses; takes over a server that a killed service left
 * running there. One process owns a folder at a time: ownership is a lock held on a connection, so it ends with the
 * process however that ends.
 * @throws StartupError in one sentence; FolderInUse while another process owns the folder
 */
export async function startBundledServer(
  folder: string,
  { settings = {}, sync = true, patienceMs = 2_000 }: BundledServerOptions = {},
): Promise<BundledServer> {
  const binaries = await findBinaries();
  const cluster = describeCluster(path.resolve(folder), serverAccount());
  await initialiseCluster(binaries, cluster, sync);
  const postmaster = await runPostmaster(binaries, cluster, settings);
  const connection = (database: string) => clusterConnection(cluster, database);
  const owner = await takeOwnership(folder, postmaster, connection("postgres"), patienceMs);
  return {
    ...postmaster,
    connection,
    async stop() {
      await owner.end().catch(() => {});
      await stopPostmaster(postmaster.pid);
    },
  };
}

async function takeOwnership(
  folder: string,
  postmaster: Postmaster,
  connection: pg.ClientConfig,
  patienceMs: number,
): Promise<pg.Client> {
  const client = new pg.Client({ ...connection, application_name: "owner", keepAlive: true });
  client.on("error", () => {}); // the server went away: whoever queries it next reports that
  try {
    await client.connect();
    const deadline = Date.now() + patienceMs;
    do {
      const { rows } = await client.query<{ mine: boolean }>(
        "select pg_try_advisory_lock($1::bigint) as mine",
        [OWNER_LOCK],
      );
      if (rows[0]?.mine) return client;
      await sleep(OWNER_POLL_MS);
    } while (Date.now() < deadline);
  } catch (error) {
    await client.end().catch(() => {});
    await stopPostmaster(postmaster.pid);
    throw error;
  }
  await client.end();
  throw new FolderInUse(
    `Another process is using the data folder ${folder}: stop that one first, or set DATA_DIR to another folder.`,
  );
}
