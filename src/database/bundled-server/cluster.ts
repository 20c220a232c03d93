import { spawn } from "node:child_process";
import { chownSync, existsSync, mkdirSync, readFileSync, realpathSync, renameSync, rmSync } from "node:fs";
import path from "node:path";
import type pg from "pg";
import { StartupError } from "../../lib/startup-error.ts";
import type { Binaries } from "./binaries.ts";
import type { ServerAccount } from "./server-account.ts";

/** Where one bundled PostgreSQL keeps everything: data, socket, log. */
export interface Cluster {
  readonly data: string;
  readonly socket: string;
  readonly log: string;
  readonly account: ServerAccount;
}

// sockaddr_un.sun_path less its closing zero: unix(7) on Linux 108, on macOS 104
const SOCKET_PATH_LIMIT = process.platform === "darwin" ? 103 : 107;

/**
 * Makes the folder and names what is in it; no PostgreSQL runs yet.
 * @throws StartupError when the folder can't be made or its path is too long for a socket
 */
export function describeCluster(folder: string, account: ServerAccount): Cluster {
  let base: string;
  try {
    mkdirSync(folder, { recursive: true });
    if (account.uid !== undefined && account.gid !== undefined) chownSync(folder, account.uid, account.gid);
    base = realpathSync(folder);
  } catch (cause) {
    const { code } = cause as NodeJS.ErrnoException;
    throw new StartupError(
      `The data folder ${folder} can't be written (${code}): set DATA_DIR to a folder that can.`,
      { cause },
    );
  }
  const data = path.join(base, "data");
  const socket = path.join(data, ".s.PGSQL.5432");
  if (Buffer.byteLength(socket) > SOCKET_PATH_LIMIT)
    throw new StartupError(
      `The data folder's path is too long for a socket (${Buffer.byteLength(socket)} of ${SOCKET_PATH_LIMIT} bytes): set DATA_DIR to a shorter one than ${folder}.`,
    );
  return { data, socket, log: path.join(base, "postgres.log"), account };
}

/** Connects over the socket in the data folder; the session's zone is UTC, without which the driver shifts instants. */
export function clusterConnection(cluster: Cluster, database: string): pg.ClientConfig {
  return { host: cluster.data, port: 5432, user: "postgres", database, options: "-c TimeZone=UTC" };
}

/** What the bundled programs see of our environment: nothing that could change their language or zone. */
export const serverEnvironment = () => ({ PATH: process.env.PATH, LC_ALL: "C", TZ: "UTC" });

/**
 * Runs initdb where there is no data yet. It works under a temporary name, so an interrupted run leaves nothing that
 * looks finished. Trust is safe: the only way in is the socket, inside a folder that only this account can enter.
 * @throws StartupError with initdb's own last words
 */
export async function initialiseCluster(binaries: Binaries, cluster: Cluster, sync: boolean): Promise<void> {
  if (existsSync(cluster.data)) return;
  const unfinished = `${cluster.data}.init`;
  rmSync(unfinished, { recursive: true, force: true });
  const locale = ["--encoding=UTF8", "--locale-provider=builtin", "--builtin-locale=C.UTF-8", "--locale=C"];
  const flags = [
    "-D",
    unfinished,
    "-U",
    "postgres",
    "--auth=trust",
    ...locale,
    ...(sync ? [] : ["--no-sync"]),
  ];
  await runToEnd(binaries.initdb, flags, cluster);
  renameSync(unfinished, cluster.data);
}

/** The last lines of the server's log, for a message about why it did not start. */
export function logTail(cluster: Cluster, lines: number): string {
  try {
    return readFileSync(cluster.log, "utf8").trimEnd().split("\n").slice(-lines).join("\n");
  } catch {
    return "";
  }
}

function runToEnd(program: string, flags: readonly string[], cluster: Cluster): Promise<void> {
  const folder = path.dirname(cluster.data);
  return new Promise((resolve, reject) => {
    const fail = (reason: string) =>
      reject(
        new StartupError(
          `PostgreSQL could not be set up in ${folder} (${reason}): the account it runs under must be able to enter that folder and the programs' own; set DATA_DIR to another, or start as an ordinary user.`,
        ),
      );
    const child = spawn(program, flags, {
      ...cluster.account,
      cwd: "/",
      env: serverEnvironment(),
      stdio: ["ignore", "ignore", "pipe"],
    });
    let said = "";
    child.stderr.on("data", (chunk) => {
      said += chunk;
    });
    child.on("error", (error) => fail(error.message));
    child.on("close", (code) => (code === 0 ? resolve() : fail(firstComplaint(said) ?? `exit code ${code}`)));
  });
}

function firstComplaint(said: string): string | undefined {
  return said
    .split("\n")
    .find((line) => /error|fatal|could not/i.test(line))
    ?.trim();
}
