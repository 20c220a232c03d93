import { tmpdir } from "node:os";
import path from "node:path";
import {
  type BundledServer,
  FolderInUse,
  startBundledServer,
} from "../../src/database/bundled-server/index.ts";

const MOST_RUNS_AT_ONCE = 16;

// nothing here outlives a run, so nothing is worth waiting for the disk
const FAST = { fsync: "off", full_page_writes: "off", synchronous_commit: "off", max_connections: "200" };

/**
 * PostgreSQL for one run of tests. The folders are always the same few, so that a server left by a run that was killed
 * is taken over by the next; runs at the same time each get their own.
 */
export async function startTestServer(): Promise<BundledServer> {
  for (let run = 1; run <= MOST_RUNS_AT_ONCE; run++) {
    try {
      const folder = path.join(tmpdir(), `running-foreman-tests-${run}`);
      return await startBundledServer(folder, { settings: FAST, sync: false, patienceMs: 300 });
    } catch (error) {
      if (!(error instanceof FolderInUse)) throw error;
    }
  }
  throw new Error(`${MOST_RUNS_AT_ONCE} runs of the tests are under way: wait for one to end`);
}
