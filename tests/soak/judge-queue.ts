import type { JobFact, NightFacts } from "./facts.ts";
import { heldFor, isPassed, isUsable, lasts, leavesTimeToWalk, overlap } from "./job-times.ts";
import type { Entry } from "./journal.ts";
import { groupBy, type Life, maybeThen, readLives, surelyThroughout, type Times } from "./lives.ts";

/** Somebody's time in a queue. */
interface Wait extends Times {
  readonly job: string;
  readonly member: string;
}

/**
 * Whether what was given back went to whoever waited longest and could have it, once, and whether those who still wait
 * are those in the tables: a sentence for each that is wrong whatever the exact instants were.
 */
export function judgeQueue(entries: readonly Entry[], night: NightFacts): string[] {
  const lives = readLives(entries);
  const waits = groupBy(readWaits(entries, lives), ({ job }) => job);
  const byMember = groupBy(lives, ({ member }) => member);
  const byHandset = groupBy(lives, ({ handset }) => handset);
  const locked = entries.find(({ act }) => act === "lock");
  const given = entries.filter((entry) => entry.act === "give-back" && entry.status === 200);
  const passedOver = given.flatMap((entry) => {
    if (locked && locked.sentMs <= entry.answeredMs) return [];
    const here = waits.get(entry.job) ?? [];
    const next = entry.now?.[0];
    const nextWait = here.find((wait) => wait.member === next?.member && maybeThen(wait, entry));
    if (next && !nextWait) return [`${next.member} was given ${entry.job} without waiting for it`];
    return here
      .filter((wait) => surelyThroughout(wait, entry))
      .filter((wait) => nextWait === undefined || wait.bornByMs < nextWait.bornFromMs)
      .filter(({ member }) => surelyCan(member, entry, night, { byMember, byHandset }))
      .map(
        ({ member }) =>
          `${member}, who waited, was passed over for ${next?.member ?? "nobody"}: ${entry.job}`,
      );
  });
  return [...passedOver, ...judgeRest([...waits.values()].flat(), night)];
}

/** A wait ends when its member gets what they waited for, from the queue or by claiming it. */
function readWaits(entries: readonly Entry[], lives: readonly Life[]): Wait[] {
  const got = groupBy(lives, ({ member, job }) => `${member} ${job}`);
  return entries.flatMap(({ act, status, member, job, sentMs, answeredMs }) => {
    if (act !== "queue" || status !== 201) return [];
    const ends = (got.get(`${member} ${job}`) ?? []).filter((life) => life.bornByMs >= sentMs);
    const diesFromMs = Math.min(...ends.map(({ bornFromMs }) => bornFromMs));
    const diesByMs = Math.min(...ends.map(({ bornByMs }) => bornByMs));
    return [{ job, member, bornFromMs: sentMs, bornByMs: answeredMs, diesFromMs, diesByMs }];
  });
}

interface Around {
  readonly byMember: ReadonlyMap<string, readonly Life[]>;
  readonly byHandset: ReadonlyMap<string | null, readonly Life[]>;
}

/** Whether nothing can have been in the way of that member having it; a junior's adult is not looked for. */
function surelyCan(code: string, entry: Entry, night: NightFacts, { byMember, byHandset }: Around): boolean {
  const [member, job] = [night.members.get(code), night.jobs.get(entry.job)];
  if (!member || !job || member.junior || !isPassed(member, job)) return false;
  const about = new Set([...(entry.gone ?? []), ...(entry.now ?? []).map(({ id }) => id)]);
  const then = (life: Life) => !about.has(life.id) && maybeThen(life, entry);
  const busy = (byMember.get(code) ?? []).some((life) => then(life) && clash(life, job, night));
  if (busy || job.kind === "duty") return !busy;
  return [...night.handsets.values()].some((handset) => {
    const lives = (byHandset.get(handset.code) ?? []).filter(then);
    const others = lives.flatMap((life) => night.jobs.get(life.job) ?? []);
    const free = !lives.some((life) => together(life, job, night));
    return free && isUsable(handset, job) && lasts(handset, [...others, job], night);
  });
}

function together({ job: code }: Life, job: JobFact, night: NightFacts): boolean {
  const other = night.jobs.get(code);
  return other !== undefined && overlap(heldFor(other, night), heldFor(job, night));
}

function clash(life: Life, job: JobFact, night: NightFacts): boolean {
  const other = night.jobs.get(life.job);
  return together(life, job, night) || (other !== undefined && !leavesTimeToWalk(other, job, night));
}

/** Those who wait for certain are in the tables, and nobody else is. */
function judgeRest(waits: readonly Wait[], { queue }: NightFacts): string[] {
  const say = ({ job, member }: { job: string; member: string }) => `${member} for ${job}`;
  const still = new Set(waits.filter(({ diesByMs }) => diesByMs === Number.POSITIVE_INFINITY).map(say));
  const stored = new Set(queue.map(say));
  return [
    ...[...still].filter((wait) => !stored.has(wait)).map((wait) => `told to wait, but not there: ${wait}`),
    ...[...stored].filter((wait) => !still.has(wait)).map((wait) => `waits, but was not told so: ${wait}`),
  ];
}
