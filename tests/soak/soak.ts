import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { CrowdPlan } from "./crowd-plan.ts";
import { type Entry, readJournals } from "./journal.ts";
import { judgeEnding } from "./judge-ending.ts";
import { judgeHistory } from "./judge-history.ts";
import { judgeQueue } from "./judge-queue.ts";
import { judgeRefusals } from "./judge-refusals.ts";
import { judgeTables } from "./judge-tables.ts";
import { CLUB, type ClubSize, NIGHT } from "./made-club.ts";
import { moveNight, SESSION_URL } from "./move-night.ts";
import { readTables } from "./read-tables.ts";
import { type Stage, setStage } from "./stage.ts";
import { startCrowd } from "./start-crowd.ts";

export interface SoakSize extends ClubSize {
  readonly posts: number;
  readonly processes: number;
}

/** What is killed in the middle of it, without warning. */
export const BLOWS = ["nothing", "server", "database"] as const;
export type Blow = (typeof BLOWS)[number];

export interface SoakResult {
  readonly faults: readonly string[];
  readonly seconds: number;
  readonly entries: readonly Entry[];
  /** Errors in the servers' logs. */
  readonly complaints: readonly string[];
  /** Claims there at the end. */
  readonly claims: number;
}

/**
 * Every member presses at once, from several processes against two processes of the service on one database; towards the
 * end the secretary locks the night. Afterwards the tables alone, then the answers, are judged.
 */
export async function soak(size: SoakSize, blow: Blow): Promise<SoakResult> {
  const stage = await setStage(size);
  const journals = mkdtempSync(path.join(tmpdir(), "soak-"));
  try {
    await moveNight(stage, "open");
    const plans = await planCrowd(size, stage, journals);
    const begun = Date.now();
    const crowd = startCrowd(plans);
    try {
      await crowd.reached(size.posts * 0.4);
      await strike(stage, blow);
      await crowd.reached(size.posts * 0.95);
      const locked = await moveNight(stage, "locked");
      await crowd.done;
      const seconds = (Date.now() - begun) / 1_000;
      const entries = [...readJournals(plans.map(({ journal }) => journal)), locked];
      const night = await readTables(stage.connection, CLUB.code, NIGHT.session);
      const faults = [
        ...judgeTables(night),
        ...judgeHistory(entries, night),
        ...judgeEnding(entries, night),
        ...judgeRefusals(entries, night),
        ...judgeQueue(entries, night),
      ];
      return { faults, seconds, entries, claims: night.claims.length, complaints: await stage.close() };
    } finally {
      crowd.kill();
    }
  } catch (cause) {
    throw new Error(`the soak broke off: ${cause}; logs: ${(await stage.close()).join("\n")}`, { cause });
  } finally {
    rmSync(journals, { recursive: true, force: true });
    await stage.close();
  }
}

async function strike(stage: Stage, blow: Blow): Promise<void> {
  if (blow === "server") await stage.killServer();
  if (blow === "database") await stage.killDatabase();
}

/** Members share out over the processes, and each process talks to both servers. */
async function planCrowd(size: SoakSize, stage: Stage, folder: string): Promise<CrowdPlan[]> {
  const night = await readTables(stage.connection, CLUB.code, NIGHT.session);
  return Array.from({ length: size.processes }, (_, at) => ({
    servers: stage.servers,
    slotUrl: `${SESSION_URL}/slots/${NIGHT.slot}`,
    people: stage.people.filter((_, number) => number % size.processes === at),
    secretary: stage.secretary,
    jobs: [...night.jobs.values()].map(({ code, kind }) => ({ code, kind })),
    handsets: [...night.handsets.keys()],
    posts: Math.ceil(size.posts / size.processes),
    seed: size.seed * 100 + at,
    journal: path.join(folder, `${at}.jsonl`),
  }));
}
