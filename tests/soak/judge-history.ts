import type { JobFact, NightFacts } from "./facts.ts";
import { heldFor, leavesTimeToWalk, overlap } from "./job-times.ts";
import type { Entry } from "./journal.ts";
import { groupBy, type Life, readLives, surelyTogether } from "./lives.ts";

/** What the answers say was booked twice at some time, though the tables may since have changed: a sentence each. */
export function judgeHistory(entries: readonly Entry[], night: NightFacts): string[] {
  const lives = readLives(entries);
  return [
    ...pairs(lives, (life) => life.job).map((pair) => tell("one job", pair)),
    ...pairs(lives, (life) => life.member)
      .filter(([a, b]) => !fitTogether(jobOf(a, night), jobOf(b, night), night))
      .map((pair) => tell("one member", pair)),
    ...pairs(
      lives.filter(({ handset }) => handset !== null),
      (life) => life.handset,
    )
      .filter(([a, b]) => overlap(heldFor(jobOf(a, night), night), heldFor(jobOf(b, night), night)))
      .map((pair) => tell("one handset", pair)),
    ...hadTooLate(entries),
  ];
}

type Pair = readonly [Life, Life];

/** Of each group, those that were there together for certain. */
function pairs(lives: readonly Life[], key: (life: Life) => unknown): Pair[] {
  return [...groupBy(lives, key).values()].flatMap((group) =>
    group.flatMap((a, at) =>
      group
        .slice(at + 1)
        .filter((b) => surelyTogether(a, b))
        .map((b): Pair => [a, b]),
    ),
  );
}

/** Nothing was had once the night was locked for certain. */
function hadTooLate(entries: readonly Entry[]): string[] {
  const locked = entries.find(({ act, status }) => act === "lock" && status === 200);
  if (!locked) return [];
  return entries
    .filter(({ act, status, sentMs }) => act === "claim" && status === 201 && sentMs > locked.answeredMs)
    .map(({ member, job }) => `${member} got ${job} after the night was locked`);
}

const fitTogether = (a: JobFact, b: JobFact, night: NightFacts) =>
  !overlap(heldFor(a, night), heldFor(b, night)) && leavesTimeToWalk(a, b, night);

function jobOf({ job }: Life, { jobs }: NightFacts): JobFact {
  const found = jobs.get(job);
  if (!found) throw new Error(`there is no ${job}`);
  return found;
}

const tell = (what: string, [a, b]: Pair) =>
  `${what}, two claims: ${a.member} had ${a.job} with ${a.handset}, and ${b.member} ${b.job} with ${b.handset}`;
