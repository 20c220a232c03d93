import { readFileSync } from "node:fs";
import autocannon from "autocannon";
import Fastify from "fastify";
import { dataFolder, killServices, type Service, startService } from "../../server/service.ts";

/**
 * The built service with the demo club, as a process of its own: start-up on an existing data folder, the check of a stored
 * slot over HTTP beside a bare Fastify route that sends the same bytes, and memory after 1,000 checks. Build first.
 */
export async function benchService(): Promise<void> {
  const data = dataFolder();
  const environment = { DATA_DIR: data.folder, DEMO: "true" };
  try {
    await printStartUp(environment);
    const service = startService(environment);
    const address = await service.address;
    const target = `${address}${await firstSlot(address)}/check`;
    await printMemory(service, target);
    await printThroughput(target);
  } finally {
    await killServices();
    data.remove();
  }
}

async function printStartUp(environment: Readonly<Record<string, string>>): Promise<void> {
  const rounds: number[] = [];
  for (let round = 0; round < 6; round++) {
    const before = performance.now();
    const service = startService(environment);
    const address = await service.address;
    await fetch(`${address}/healthz`);
    rounds.push(performance.now() - before);
    service.process.kill("SIGTERM");
    await service.ended;
  }
  const [first = 0, ...again] = rounds;
  console.log(`start-up to the first answer: empty data folder, demo loaded ${first.toFixed(0)} ms;`);
  console.log(`  existing data folder ${median(again).toFixed(0)} ms (median of ${again.length})`);
}

/** Address of the demo's first slot, found as a stranger would: by walking the lists. */
async function firstSlot(address: string): Promise<string> {
  const clubs = (await (await fetch(`${address}/api/clubs`)).json()) as List<{ code: string }>;
  const club = `/api/clubs/${clubs.items[0]?.code}`;
  const sessions = (await (await fetch(`${address}${club}/sessions`)).json()) as List<SessionItem>;
  const session = sessions.items[0];
  return `${club}/sessions/${session?.code}/slots/${session?.slots[0]?.code}`;
}

interface List<Item> {
  readonly items: readonly Item[];
}

interface SessionItem {
  readonly code: string;
  readonly slots: readonly { readonly code: string }[];
}

async function printMemory(service: Service, target: string): Promise<void> {
  const check = async () => {
    const response = await fetch(target, { method: "POST" });
    if (response.status !== 200) throw new Error(`${target} answered ${response.status}`);
    await response.arrayBuffer();
  };
  await check();
  const before = residentMb(service);
  const marks: string[] = [];
  for (let done = 1; done <= 1_000; done++) {
    await check();
    if (done % 250 === 0) marks.push(`${done}: ${residentMb(service).toFixed(0)}`);
  }
  console.log(`memory (resident MB) after the first check ${before.toFixed(0)}; after ${marks.join(", ")}`);
}

function residentMb({ process: { pid } }: Service): number {
  const found = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, "utf8"));
  return Number(found?.[1]) / 1_024;
}

async function printThroughput(target: string): Promise<void> {
  const body = await (await fetch(target, { method: "POST" })).text();
  const bare = Fastify();
  bare.post("/small", async () => ({ ok: true }));
  bare.post("/same", async (_, reply) => reply.type("application/json").send(body));
  const bareAddress = await bare.listen({ port: 0, host: "127.0.0.1" });
  console.log(`check of a stored slot over HTTP, answer ${(body.length / 1_024).toFixed(0)} KiB:`);
  for (const connections of [1, 8]) {
    const row = async (name: string, url: string) => {
      const result = await autocannon({ url, method: "POST", connections, duration: 6 });
      if (result.non2xx > 0 || result.errors > 0) throw new Error(`${name}: ${result.non2xx} refused`);
      const { p50, p99 } = result.latency;
      console.log(
        `  ${name.padEnd(28)} ${connections} at once: ${result.requests.average.toFixed(0).padStart(6)} a second, p50 ${p50} ms, p99 ${p99} ms`,
      );
    };
    await row("stored check", target);
    await row("bare route, same bytes", `${bareAddress}/same`);
    await row("bare route, one field", `${bareAddress}/small`);
  }
  await bare.close();
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}
