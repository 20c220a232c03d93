import { createServer } from "node:net";
import path from "node:path";
import type pg from "pg";
import { club } from "../../shared/clubs.ts";
import { clubDocument } from "../../shared/documents.ts";
import { TRANSFER_KINDS } from "../../src/app.ts";
import { type BundledServer, startBundledServer } from "../../src/database/bundled-server/index.ts";
import { createClient } from "../../src/database/client.ts";
import { migrate } from "../../src/database/migrate.ts";
import { createClub } from "../../src/features/clubs/index.ts";
import { createTransferService } from "../../src/features/transfer/index.ts";
import { projectRoot } from "../../src/lib/project-root.ts";
import { dataFolder, killServices, type Service, startService } from "../server/service.ts";
import { runSql } from "../support/sql.ts";
import type { CrowdMember } from "./crowd-plan.ts";
import { issuePasses } from "./issue-passes.ts";
import { CLUB, type ClubSize, madeClub, memberCode, NIGHT } from "./made-club.ts";

const ROOT = projectRoot(import.meta.dirname);
const DATABASE = "soak";

/** A PostgreSQL that keeps what it says it kept, and two processes of the built service on it. */
export interface Stage {
  readonly connection: pg.ClientConfig;
  readonly servers: readonly string[];
  /** All members of the club, and what lets each of them in. */
  readonly people: readonly CrowdMember[];
  /** What lets the secretary in. */
  readonly secretary: Readonly<Record<string, string>>;
  /** kill -9 of the second process, which comes back on its port. */
  killServer(): Promise<void>;
  /** kill -9 of PostgreSQL, which comes back on its data. */
  killDatabase(): Promise<void>;
  /** Ends all, and returns the errors in the servers' logs; only once. */
  close(): Promise<string[]>;
}

export async function setStage(size: ClubSize): Promise<Stage> {
  const data = dataFolder();
  const folder = path.join(data.folder, "postgres");
  let postgres = await startBundledServer(folder);
  const connection = postgres.connection(DATABASE);
  await runSql(postgres.connection("postgres"), `create database ${DATABASE}`);
  await migrate(connection, path.join(ROOT, "prisma/migrations"));
  await bringClub(connection, size);
  const codes = Array.from({ length: size.members }, (_, at) => memberCode(at));
  const passes = await issuePasses(connection, codes);
  const ports = [await freePort(), await freePort()];
  const start = (port: number) => startService({ DATABASE_URL: urlOf(postgres), PORT: String(port) });
  const services = ports.map(start) as [Service, Service];
  const close = async () => {
    await killServices();
    const said = await Promise.all(services.map(({ ended }) => ended));
    await postgres.stop();
    data.remove();
    return said.flatMap(({ output, errors }) => complaints(`${output}\n${errors}`));
  };
  let closed: Promise<string[]> | undefined;
  return {
    connection,
    servers: await Promise.all(services.map(({ address }) => address)),
    ...passes,
    async killServer() {
      services[1].process.kill("SIGKILL");
      await services[1].ended;
      services[1] = start(ports[1] as number);
      await services[1].address;
    },
    async killDatabase() {
      process.kill(postgres.pid, "SIGKILL");
      postgres = await startBundledServer(folder);
    },
    close: () => {
      closed ??= close();
      return closed;
    },
  };
}

/** Lines of a log that tell of an error (pino: 50 and above), or of no log. */
function complaints(said: string): string[] {
  return said.split("\n").filter((line) => line !== "" && !/^Running Foreman: |"level":[1-4]0/.test(line));
}

const urlOf = ({ connection }: BundledServer) =>
  `postgresql:///${DATABASE}?host=${encodeURIComponent(connection(DATABASE).host ?? "")}&user=postgres`;

/** The made club, the ways between its places, and two standing duties. */
async function bringClub(connection: pg.ClientConfig, size: ClubSize): Promise<void> {
  const database = createClient(connection);
  try {
    await createClub(database, club.parse(CLUB));
    const transfer = createTransferService(database, TRANSFER_KINDS);
    await transfer.importClub(CLUB.code, clubDocument.parse(madeClub(size)), { dryRun: false });
  } finally {
    await database.$disconnect();
  }
  // a minute from each place to the next in the row
  const walks = `
    insert into walks (id, club_id, code, from_code, to_code, seconds)
    select gen_random_uuid(), c.id, a.code || '-' || b.code, a.code, b.code,
      60 * (substr(b.code, 2)::int - substr(a.code, 2)::int)
    from clubs c join places a on a.club_id = c.id join places b on b.club_id = c.id and a.code < b.code
    where c.code = $1`;
  await runSql(connection, walks, [CLUB.code]);
  const duties = `
    insert into duties (id, club_id, session_id, slot_code, code, name, kind, place_code, starts_at, ends_at, requires)
    select gen_random_uuid(), s.club_id, s.id, sl.code, kind || part, kind || ' ' || part, kind, 'P1',
      sl.starts_at + (part - 1) * (sl.ends_at - sl.starts_at) / 2, sl.starts_at + part * (sl.ends_at - sl.starts_at) / 2,
      array['branch']
    from sessions s join slots sl on sl.session_id = s.id,
      unnest(array['signalling', 'marshal']) kind, generate_series(1, 2) part
    where s.code = $1`;
  await runSql(connection, duties, [NIGHT.session]);
}

/** One that nobody uses now; a killed server comes back on the same. */
function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer().on("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() => resolve(typeof address === "object" ? (address?.port ?? 0) : 0));
    });
  });
}
