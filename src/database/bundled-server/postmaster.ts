import { spawn } from "node:child_process";
import { chownSync, closeSync, openSync, readFileSync } from "node:fs";
import path from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import pg from "pg";
import { StartupError } from "../../lib/startup-error.ts";
import type { Binaries } from "./binaries.ts";
import { type Cluster, clusterConnection, logTail, serverEnvironment } from "./cluster.ts";

export type ServerSettings = Readonly<Record<string, string>>;

/** A PostgreSQL that answers; adopted when it was already running, left over from a service that was killed. */
export interface Postmaster {
  readonly pid: number;
  readonly adopted: boolean;
}

// long enough to replay the log after a crash in mid-write on a slow disk
const START_LIMIT_MS = 60_000;
const POLL_MS = 20;
const RETRY_MS = 250;
const STOP_LIMIT_MS = 30_000;

// a predecessor that is still shutting down, killed but not yet reaped, or outlived by its children
const PREDECESSOR_LINGERS = /lock file "postmaster\.pid" already exists|pre-existing shared memory block/;

/**
 * Finds the server that runs on the cluster, or starts one, and retries while a dying predecessor is in the way.
 * @throws StartupError with the server's own last words
 */
export async function runPostmaster(
  binaries: Binaries,
  cluster: Cluster,
  settings: ServerSettings,
): Promise<Postmaster> {
  const deadline = Date.now() + START_LIMIT_MS;
  for (;;) {
    const pid = recordedPid(cluster);
    if (pid !== undefined && isAlive(pid) && (await answers(cluster))) return { pid, adopted: true };
    const attempt = await tryStart(binaries, cluster, settings, deadline);
    if (attempt.pid !== undefined) return { pid: attempt.pid, adopted: false };
    if (!PREDECESSOR_LINGERS.test(attempt.reason) || Date.now() > deadline)
      throw new StartupError(`PostgreSQL did not start in ${path.dirname(cluster.data)}: ${attempt.reason}`);
    await sleep(RETRY_MS);
  }
}

/** Fast shutdown: open transactions are rolled back, everything is flushed; returns when the process is gone. */
export async function stopPostmaster(pid: number): Promise<void> {
  signal(pid, "SIGINT");
  const deadline = Date.now() + STOP_LIMIT_MS;
  while (isAlive(pid)) {
    if (Date.now() > deadline) return signal(pid, "SIGQUIT");
    await sleep(POLL_MS);
  }
}

async function tryStart(
  binaries: Binaries,
  cluster: Cluster,
  settings: ServerSettings,
  deadline: number,
): Promise<{ pid: number } | { pid: undefined; reason: string }> {
  const child = spawnDetached(binaries, cluster, settings);
  let ended: string | undefined;
  child.on("error", (error) => {
    ended = error.message;
  });
  child.on("exit", (code) => {
    ended ??= logTail(cluster, 6) || `exit code ${code}`;
  });
  while (ended === undefined && Date.now() < deadline) {
    if (child.pid !== undefined && recordedPid(cluster) === child.pid && (await answers(cluster))) {
      child.unref();
      return { pid: child.pid };
    }
    await sleep(POLL_MS);
  }
  if (ended === undefined && child.pid !== undefined) await stopPostmaster(child.pid);
  return {
    pid: undefined,
    reason: ended ?? `no answer in ${START_LIMIT_MS / 1000} s\n${logTail(cluster, 6)}`,
  };
}

/** In a process group of its own, so that Ctrl-C at the terminal reaches the service first and not the database. */
function spawnDetached(binaries: Binaries, cluster: Cluster, settings: ServerSettings) {
  const all = {
    listen_addresses: "",
    unix_socket_directories: cluster.data,
    timezone: "UTC",
    log_timezone: "UTC",
    ...settings,
  };
  const flags = Object.entries(all).flatMap(([name, value]) => ["-c", `${name}=${value}`]);
  const log = openSync(cluster.log, "a");
  const { uid, gid } = cluster.account;
  try {
    if (uid !== undefined && gid !== undefined) chownSync(cluster.log, uid, gid);
    return spawn(binaries.postgres, ["-D", cluster.data, ...flags], {
      ...cluster.account,
      cwd: "/",
      env: serverEnvironment(),
      detached: true,
      stdio: ["ignore", log, log],
    });
  } finally {
    closeSync(log);
  }
}

/** Whether a server answers on the socket and it is this folder's: a copied folder may carry a foreign pid file. */
async function answers(cluster: Cluster): Promise<boolean> {
  const client = new pg.Client({ ...clusterConnection(cluster, "postgres"), connectionTimeoutMillis: 2_000 });
  client.on("error", () => {});
  try {
    await client.connect();
    const { rows } = await client.query<{ data_directory: string }>("show data_directory");
    return rows[0]?.data_directory === cluster.data;
  } catch {
    return false;
  } finally {
    await client.end().catch(() => {});
  }
}

function recordedPid(cluster: Cluster): number | undefined {
  try {
    const pid = Number.parseInt(readFileSync(path.join(cluster.data, "postmaster.pid"), "utf8"), 10);
    return pid > 0 ? pid : undefined;
  } catch {
    return undefined;
  }
}

/** A killed process that its parent has not reaped yet still takes signals, so look for the zombie state as well. */
function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
  try {
    return !readFileSync(`/proc/${pid}/stat`, "utf8").split(") ").at(-1)?.startsWith("Z");
  } catch {
    return process.platform !== "linux";
  }
}

function signal(pid: number, name: NodeJS.Signals): void {
  try {
    process.kill(pid, name);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "ESRCH") throw error;
  }
}
