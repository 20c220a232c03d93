import { createWriteStream } from "node:fs";
import { finished } from "node:stream/promises";
import type { CrowdPlan, Progress } from "./crowd-plan.ts";
import type { Table } from "./member.ts";
import { playMember, playSecretary } from "./one-member.ts";

/** One process of the crowd: its members all press at once. Started by `startCrowd`. */
const plan = JSON.parse(process.argv[2] ?? "") as CrowdPlan;
const journal = createWriteStream(plan.journal);
let posts = 0;

const table: Table = {
  plan,
  members: new Map(),
  takeTurn(): boolean {
    if (posts >= plan.posts) return false;
    posts++;
    if (posts % 20 === 0 || posts === plan.posts) process.send?.({ posts } satisfies Progress);
    return true;
  },
  write(entry): void {
    journal.write(`${JSON.stringify(entry)}\n`);
  },
};

await Promise.all([
  ...plan.people.map((person, at) => playMember(person, at, table)),
  playSecretary(plan.secretary, table),
]);
journal.end();
await finished(journal);
process.disconnect?.();
