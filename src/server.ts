import { readFileSync } from "node:fs";
import type { AddressInfo } from "node:net";
import path from "node:path";
import closeWithGrace from "close-with-grace";
import pretty from "pino-pretty";
import { type Ask, demoClub, demoPeople, loadDemo, openDemoNight } from "../seed/index.ts";
import { buildApp, TRANSFER_KINDS } from "./app.ts";
import { type Config, parseConfig } from "./config.ts";
import { createClient, type DatabaseClient } from "./database/client.ts";
import { migrate } from "./database/migrate.ts";
import { once } from "./database/milestones.ts";
import { type OpenDatabase, openDatabase } from "./database/open-database.ts";
import { findClub } from "./database/records/clubs.ts";
import {
  createAuthenticate,
  letDemoPeopleIn,
  linkAddress,
  makeFirstLink,
} from "./features/accounts/index.ts";
import { createClub } from "./features/clubs/index.ts";
import { reminderChore } from "./features/mails/index.ts";
import { createTransferService } from "./features/transfer/index.ts";
import type { HttpApp } from "./http/bare-app.ts";
import { systemClock } from "./lib/clock.ts";
import { projectRoot } from "./lib/project-root.ts";
import { StartupError } from "./lib/startup-error.ts";
import { queueingMailer, quietMailer } from "./mail/mailer.ts";
import { migrateQueue, openPostOffice } from "./mail/post-office.ts";
import { createTransport } from "./mail/transport.ts";

type Closers = (() => Promise<unknown>)[];

// requests in hand, then the database's own shutdown
const CLOSE_LIMIT_MS = 45_000;
const root = projectRoot(import.meta.dirname);

/** A signal while it still starts lets it finish starting first: half-started things have nothing to be closed by. */
async function main(): Promise<void> {
  const closers: Closers = [];
  const booting = boot(closers);
  closeWithGrace({ delay: CLOSE_LIMIT_MS }, async ({ err }) => {
    if (err) console.error(err);
    await booting.catch(() => {});
    await closeAll(closers);
  });
  try {
    console.log(await booting);
  } catch (error) {
    console.error(error instanceof StartupError ? `Running Foreman can't start. ${error.message}` : error);
    await closeAll(closers);
    process.exit(1);
  }
}

/** Starts everything, what it leans on first, and tells `closers` how to end each; returns the line that says where to look. */
async function boot(closers: Closers): Promise<string> {
  const config = parseConfig(process.env, root);
  const opened = await openDatabase(config.databaseUrl, config.dataDir);
  closers.push(() => opened.close());
  await migrate(opened.connection, path.join(root, "prisma/migrations"));
  await migrateQueue(opened.connection);
  const database = createClient(opened.connection);
  closers.push(() => database.$disconnect());
  if (config.demo) await bringDemo(opened, database);
  let address = "";
  const publicUrl = () => config.publicUrl ?? address;
  const mailer = config.mail ? queueingMailer : quietMailer;
  const app = await buildApp({
    database,
    connection: opened.connection,
    mailer,
    publicUrl,
    clock: systemClock,
    authenticate: createAuthenticate(database, systemClock, { demo: config.demo }),
    demoSignIns: config.demo ? demoPeople : undefined,
    logger: process.stdout.isTTY
      ? { level: config.logLevel, stream: pretty({ sync: true }) }
      : { level: config.logLevel },
    listenHost: config.host,
    trustedProxies: config.trustedProxies,
    clientDir: path.join(root, "dist/web"),
    version: readVersion(),
  });
  closers.push(() => app.close());
  if (config.demo) await once(opened.connection, "demo-night", () => openDemoNight(askIn(app)));
  address = await listen(app, config);
  if (config.mail) {
    const office = await openPostOffice({
      connection: opened.connection,
      transport: createTransport(config.mail.url, config.mail.from),
      chores: [reminderChore({ database, mailer, clock: systemClock, publicUrl })],
      warn: (message) => app.log.warn(message),
    });
    closers.push(() => office.close());
  }
  const first = await makeFirstLink(database, systemClock);
  return [
    `Running Foreman: ${address}${config.demo ? ` (demo club: ${demoClub.name})` : ""}`,
    ...(first === undefined
      ? []
      : [`Nobody has an account yet. Make the first one at ${linkAddress(publicUrl(), first)}`]),
  ].join("\n");
}

/** A club to look at, brought once into a database. */
async function bringDemo({ connection }: OpenDatabase, database: DatabaseClient): Promise<void> {
  const transfer = createTransferService(database, TRANSFER_KINDS);
  await once(connection, "demo-club", () =>
    loadDemo(async (club, document) => {
      // a start that was interrupted here has made the club already
      if ((await findClub(database, club.code)) === undefined) await createClub(database, club);
      await transfer.importClub(club.code, document, { dryRun: false });
    }),
  );
  await once(connection, "demo-people", () => letDemoPeopleIn(database, demoClub.code, demoPeople));
}

/** Sends a request to the app without the network between. */
const askIn =
  (app: HttpApp): Ask =>
  async (method, url, body, headers = {}) => {
    const response = await app.inject({ method, url, headers, ...(body && { payload: body }) });
    const [cookie] = [response.headers["set-cookie"] ?? []].flat();
    return {
      status: response.statusCode,
      body: response.body === "" ? undefined : response.json(),
      cookie: cookie?.split(";", 1)[0],
    };
  };

async function listen(app: HttpApp, { host, port }: Config): Promise<string> {
  try {
    await app.listen({ host, port });
  } catch (cause) {
    const { code = "" } = cause as NodeJS.ErrnoException;
    const sentence = LISTEN_FAILURES[code]?.(host, port);
    throw sentence === undefined ? cause : new StartupError(sentence, { cause });
  }
  const bound = app.server.address() as AddressInfo;
  const shown = host === "0.0.0.0" || host === "::" ? "localhost" : host.includes(":") ? `[${host}]` : host;
  return `http://${shown}:${bound.port}/`;
}

const LISTEN_FAILURES: Readonly<Record<string, (host: string, port: number) => string>> = {
  EADDRINUSE: (host, port) =>
    `Port ${port} on ${host} is taken: stop what listens there, or set PORT to another (0 for any free one).`,
  EACCES: (_, port) => `This account may not listen on port ${port}: set PORT to one above 1023.`,
  EADDRNOTAVAIL: (host) => `This machine has no address ${host}: set HOST to one it has.`,
  ENOTFOUND: (host) => `This machine has no address ${host}: set HOST to one it has.`,
};

/** Last opened, first closed; what fails to close does not keep the rest open. */
async function closeAll(closers: Closers): Promise<void> {
  for (let close = closers.pop(); close !== undefined; close = closers.pop())
    await close().catch((error: unknown) => console.error(error));
}

function readVersion(): string {
  const { version } = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8")) as {
    version: string;
  };
  return version;
}

await main();
