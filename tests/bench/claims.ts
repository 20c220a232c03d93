import autocannon from "autocannon";
import Fastify from "fastify";
import pg from "pg";
import type { CrowdMember } from "../soak/crowd-plan.ts";
import { allRounders, CLUB, NIGHT } from "../soak/made-club.ts";
import { moveNight } from "../soak/move-night.ts";
import { type Stage, setStage } from "../soak/stage.ts";
import { median } from "./measure.ts";
import { printTable } from "./table.ts";

const SLOT_URL = `/api/clubs/${CLUB.code}/sessions/${NIGHT.session}/slots/${NIGHT.slot}`;
const LANES = 12;
const SIZE = { members: 200, lanes: LANES, turns: 5, seed: 1 };
const CLIENTS = [1, 8];
const LAPS = 3;
const LAP_MS = 4_000;

/**
 * Claims a second over HTTP, each given back again, beside the same rows inserted and deleted by plain SQL under the same
 * constraints; and how long the board takes under 200 clients. Both ends on one PostgreSQL that waits for its disk. Build first.
 */
export async function benchClaims(): Promise<void> {
  const stage = await setStage(SIZE);
  try {
    await moveNight(stage, "open");
    const able = allRounders(SIZE);
    const drivers = stage.people.filter(({ code }) => able.has(code));
    await printClaims(stage, drivers);
    await printBoard(stage, drivers);
  } finally {
    await stage.close();
  }
}

type Drivers = readonly CrowdMember[];

function driverAt(drivers: Drivers, at: number): CrowdMember {
  const driver = drivers[at];
  if (!driver) throw new Error(`the made club has fewer than ${at + 1} who may drive everything`);
  return driver;
}

/** Makes a claim and gives it back, once. */
type Turn = () => Promise<void>;

async function printClaims(stage: Stage, drivers: Drivers): Promise<void> {
  const rows: (string | number)[][] = [];
  for (const clients of CLIENTS) {
    const overHttp = Array.from({ length: clients }, (_, at) => claimAndGiveBack(stage, drivers, at));
    for (const turn of overHttp) await turn(); // warm, and each finds that it may
    const plain = await plainTurns(stage, drivers, clients);
    const [service, sql]: [number[], number[]] = [[], []];
    for (let lap = 0; lap < LAPS; lap++) {
      service.push(await rate(overHttp));
      sql.push(await rate(plain.turns));
    }
    await plain.close();
    const [ours, peer] = [median(service), median(sql)];
    rows.push([clients, ours.toFixed(0), peer.toFixed(0), (peer / ours).toFixed(1)]);
  }
  printTable(["clients", "claims and returns a second", "by plain SQL", "SQL is faster by"], rows);
}

/** Turns of all clients together, a second. */
async function rate(turns: readonly Turn[]): Promise<number> {
  const begun = performance.now();
  let done = 0;
  await Promise.all(
    turns.map(async (turn) => {
      for (; performance.now() - begun < LAP_MS; done++) await turn();
    }),
  );
  return (1_000 * done) / (performance.now() - begun);
}

/** Each client is a member with a train of a lane of their own, through one of the servers; the service chooses the handset. */
function claimAndGiveBack({ servers }: Stage, drivers: Drivers, at: number): Turn {
  const claims = `${servers[at % servers.length]}${SLOT_URL}/claims`;
  const { code, headers } = driverAt(drivers, at);
  let posts = 0;
  const send = async (url: string, status: number, init: RequestInit) => {
    const key = `bench-${code}-${performance.now()}-${posts++}`;
    const response = await fetch(url, {
      ...init,
      headers: { ...headers, ...init.headers, "idempotency-key": key },
    });
    if (response.status !== status) throw new Error(`${url}: ${response.status} ${await response.text()}`);
    return (await response.json()) as { id: string };
  };
  return async () => {
    const { id } = await send(claims, 201, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify({ train: `${at + 1}.1`, member: code }),
    });
    await send(`${claims}/${id}`, 200, { method: "DELETE" });
  };
}

/** The rows that the service itself would store, of as many members and trains, each on a connection of its own. */
async function plainTurns({ connection }: Stage, drivers: Drivers, clients: number) {
  const pool = new pg.Pool({ ...connection, max: clients });
  pool.on("error", () => {}); // the stage may be cleared before it
  const { rows } = await pool.query<Record<string, unknown>>(
    `select s.club_id, s.id as session_id, sl.slot_code, t.id as train_id
     from sessions s join (select session_id, code as slot_code, club_id, timetable_code, timetable_version from slots) sl on sl.session_id = s.id
     join timetable_versions v on (v.club_id, v.timetable_code, v.number) = (sl.club_id, sl.timetable_code, sl.timetable_version)
     join trains t on t.version_id = v.id and t.code like '%.1' where s.code = $1 order by t.code limit $2`,
    [NIGHT.session, clients],
  );
  const insert = `
    insert into claims (id, club_id, session_id, slot_code, train_id, member_code, handset_code, from_at, until_at)
    values (gen_random_uuid(), $1, $2, $3, $4, $5, $6, '2027-03-20 19:05Z', '2027-03-20 19:15Z') returning id`;
  const turns = rows.map((row, at): Turn => {
    const values = [
      row.club_id,
      row.session_id,
      row.slot_code,
      row.train_id,
      driverAt(drivers, at).code,
      `${at % 2 === 0 ? "R" : "K"}${at + 1}`,
    ];
    return async () => {
      const made = await pool.query<{ id: string }>({ name: "claim", text: insert, values });
      const id = made.rows[0]?.id;
      await pool.query({ name: "give-back", text: "delete from claims where id = $1", values: [id] });
    };
  });
  return { turns, close: () => pool.end() };
}

/** The board as 200 members see it, half of its trains taken: as fast as they can, and each every two seconds. */
async function printBoard(stage: Stage, drivers: Drivers): Promise<void> {
  for (let at = 0; at < LANES / 2; at++) await claimOne(stage, drivers, at);
  const server = stage.servers[0];
  const url = `${server}${SLOT_URL}/board`;
  const headers = driverAt(drivers, 0).headers;
  const page = await fetch(url, { headers });
  const body = await page.text();
  if (page.status !== 200) throw new Error(`${url}: ${page.status} ${body}`);
  const bare = Fastify();
  bare.get("/same", async (_, reply) => reply.type("application/json").send(body));
  const same = `${await bare.listen({ port: 0, host: "127.0.0.1" })}/same`;
  const rows: string[][] = [];
  for (const [name, target, more] of [
    ["board, one client", url, { connections: 1 }],
    ["board, 200 clients, each every 2 s", url, { connections: 200, overallRate: 100 }],
    ["board, 200 clients without a pause", url, { connections: 200 }],
    ["bare route, same bytes, 200 clients", same, { connections: 200 }],
  ] as const) {
    const { requests, latency, non2xx, errors } = await autocannon({
      url: target,
      headers,
      duration: 8,
      ...more,
    });
    if (non2xx > 0 || errors > 0) throw new Error(`${name}: ${non2xx} refused, ${errors} lost`);
    rows.push([name, requests.average.toFixed(0), `${latency.p50}`, `${latency.p99}`, `${latency.max}`]);
  }
  await bare.close();
  console.log(`the board of ${LANES * 5} trains, ${(body.length / 1_024).toFixed(0)} KiB:`);
  printTable(["", "a second", "p50 ms", "p99 ms", "longest ms"], rows);
}

async function claimOne({ servers }: Stage, drivers: Drivers, at: number): Promise<void> {
  const { code, headers } = driverAt(drivers, at);
  const response = await fetch(`${servers[0]}${SLOT_URL}/claims`, {
    method: "POST",
    headers: { ...headers, "content-type": "application/json", "idempotency-key": `bench-board-${at}` },
    body: JSON.stringify({ train: `${at + 1}.1`, member: code }),
  });
  if (response.status !== 201) throw new Error(`${response.status} ${await response.text()}`);
}
