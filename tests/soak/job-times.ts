import type { HandsetFact, JobFact, MemberFact, NightFacts } from "./facts.ts";

/** To put one thing down and be at the next, even at the same place. */
const LEAST_WALK_MS = 30_000;

type Night = Pick<NightFacts, "pickUpMs" | "handInMs" | "walks">;

/** Half-open, ms: from the pick-up of its handset to where it is handed in; a duty is as long as it is. */
export function heldFor(job: JobFact, { pickUpMs, handInMs }: Night): readonly [from: number, until: number] {
  if (job.kind === "duty") return [job.startMs, job.endMs];
  return [job.startMs - pickUpMs, job.endMs + handInMs];
}

export function overlap(a: readonly [number, number], b: readonly [number, number]): boolean {
  return a[0] < b[1] && b[0] < a[1];
}

/** Whether one person can do both: neither at the same time, nor closer together than the way between them. */
export function leavesTimeToWalk(a: JobFact, b: JobFact, night: Night): boolean {
  const [first, second] = heldFor(a, night)[0] <= heldFor(b, night)[0] ? [a, b] : [b, a];
  const spareMs = heldFor(second, night)[0] - heldFor(first, night)[1];
  return spareMs >= walkMs(first.lastPlace, second.firstPlace, night);
}

function walkMs(from: string, to: string, { walks }: Night): number {
  if (from === to) return LEAST_WALK_MS;
  const seconds = walks.get(`${from}>${to}`) ?? walks.get(`${to}>${from}`);
  if (seconds === undefined) throw new Error(`the made club has no walk from ${from} to ${to}`);
  return Math.max(LEAST_WALK_MS, seconds * 1_000);
}

export const isPassed = (member: MemberFact, job: JobFact): boolean =>
  job.requires.every((tag) => member.passedFor.includes(tag));

/** Whether a handset that nobody else has can drive the train all along its run. */
export function isUsable(handset: HandsetFact, job: JobFact): boolean {
  const here = handset.kind === "radio" && handset.places.length === 0;
  return (
    handset.state === "ready" &&
    job.systems.every((system) => system === handset.system) &&
    (here || job.places.every((place) => handset.places.includes(place)))
  );
}

/** Whether its charge lasts from the first pick-up of all these to the last hand-in. */
export function lasts({ batteryMinutes }: HandsetFact, jobs: readonly JobFact[], night: Night): boolean {
  if (batteryMinutes === null || jobs.length === 0) return true;
  const spans = jobs.map((job) => heldFor(job, night));
  const from = Math.min(...spans.map(([start]) => start));
  return Math.max(...spans.map(([, end]) => end)) - from <= batteryMinutes * 60_000;
}
