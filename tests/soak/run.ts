import { printTable } from "../bench/table.ts";
import { BLOWS, type SoakResult, soak } from "./soak.ts";

/**
 * `npm run soak`: 200 members, 60 trains, 20,000 posts; once in peace, once with a server killed in the middle, once with
 * PostgreSQL killed. `-- --posts 2000` makes fewer, `-- --seed 7` others, `-- --only server` one of the three. Ends with 1 when anything is wrong.
 */
const option = (name: string) => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? undefined : process.argv[at + 1];
};
const size = {
  members: 200,
  lanes: 12,
  turns: 5,
  processes: 4,
  posts: Number(option("posts") ?? 20_000),
  seed: Number(option("seed") ?? 1),
};
const only = option("only");

for (const blow of BLOWS.filter((one) => only === undefined || one === only)) {
  console.log(`\n== ${size.posts} posts of ${size.members} members, ${blow} killed in the middle`);
  const result = await soak(size, blow);
  tell(result);
  if (result.faults.length > 0) process.exitCode = 1;
}

function tell({ faults, seconds, entries, claims, complaints }: SoakResult): void {
  const acts = new Map<string, number>();
  for (const entry of entries) count(acts, `${entry.act}: ${entry.code ?? entry.status}`);
  printTable(["what", "times"], [...acts].sort());
  const again = entries.filter(({ sendings }) => sendings > 1).length;
  const waits = entries.map(({ sentMs, answeredMs }) => answeredMs - sentMs).sort((a, b) => a - b);
  const at = (share: number) => waits[Math.floor(waits.length * share)] ?? 0;
  console.log(`${seconds.toFixed(0)} s, ${(entries.length / seconds).toFixed(0)} answers a second;`);
  console.log(`answer times p50 ${at(0.5)} ms, p99 ${at(0.99)} ms, longest ${waits.at(-1)} ms;`);
  console.log(`${again} had to be sent more than once; ${claims} claims at the end; ${faults.length} faults`);
  for (const line of complaints.slice(0, 10)) console.log(`  in a log: ${line.slice(0, 600)}`);
  for (const fault of faults.slice(0, 30)) console.log(`  ${fault}`);
}

function count(acts: Map<string, number>, what: string): void {
  acts.set(what, (acts.get(what) ?? 0) + 1);
}
