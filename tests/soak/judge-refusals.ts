import { CLAIM_HINDRANCES, type ClaimHindrance } from "../../shared/claims.ts";
import type { HandsetFact, JobFact, MemberFact, NightFacts } from "./facts.ts";
import { heldFor, isPassed, isUsable, lasts, leavesTimeToWalk, overlap } from "./job-times.ts";
import type { Act, Entry } from "./journal.ts";
import { groupBy, type Life, maybeThen, readLives, surelyThroughout } from "./lives.ts";

interface Case {
  readonly entry: Entry;
  readonly job: JobFact;
  readonly member: MemberFact;
  readonly night: NightFacts;
  /** Claims that may have been there while it was asked. */
  readonly around: Around;
  readonly locked: Entry | undefined;
}

interface Around {
  readonly byJob: ReadonlyMap<string, readonly Life[]>;
  readonly byMember: ReadonlyMap<string, readonly Life[]>;
  readonly byHandset: ReadonlyMap<string | null, readonly Life[]>;
  readonly adults: readonly Life[];
}

/**
 * Refusals that were wrong whatever the order in which things happened between the sending of a post and its answer, and
 * answers that are neither an acceptance nor a refusal: a sentence each.
 */
export function judgeRefusals(entries: readonly Entry[], night: NightFacts): string[] {
  const around = lookAround(readLives(entries), night);
  const locked = entries.find(({ act }) => act === "lock");
  return entries.flatMap((entry) => {
    if (entry.act === "repeat")
      return entry.same ? [] : [`${entry.member} sent ${entry.key} twice and was told different things`];
    if (entry.status < 300 || entry.act !== "claim") return judgeOther(entry);
    const [job, member] = [night.jobs.get(entry.job), night.members.get(entry.member)];
    if (!job || !member) throw new Error(`${entry.member} or ${entry.job} is not there`);
    const code = CLAIM_HINDRANCES.find((known) => known === entry.code);
    if (code && RIGHT[code]({ entry, job, member, night, around, locked })) return [];
    return [`${entry.member} was refused ${entry.job}: ${entry.status} ${entry.code}`];
  });
}

/**
 * What else may be refused: what somebody gave back or traded a moment ago is gone, or is another's; a wait for what is
 * free, one's own or waited for is none.
 */
const OTHERS_RIGHT: Partial<Record<Act, readonly string[]>> = {
  "give-back": ["not-found", "not-permitted", "session-not-open", "last-adult"],
  handset: ["not-found", "not-permitted", "session-not-open", "handset-not-usable", "handset-taken"],
  queue: ["already-done", "session-not-open", "not-passed"],
  offer: ["not-found", "not-permitted", "unprocessable", "session-not-open"],
  swap: ["not-found", "not-permitted", "last-adult", ...CLAIM_HINDRANCES],
  assign: ["last-adult", ...CLAIM_HINDRANCES],
};

function judgeOther(entry: Entry): string[] {
  const right = entry.status < 300 || OTHERS_RIGHT[entry.act]?.includes(entry.code ?? "");
  return right ? [] : [`${entry.act} of ${entry.job} by ${entry.member}: ${entry.status} ${entry.code}`];
}

/** When each refusal is right: at some instant of its window it may have been true. */
const RIGHT: Readonly<Record<ClaimHindrance, (which: Case) => boolean>> = {
  "session-not-open": ({ entry, locked }) => locked !== undefined && locked.sentMs <= entry.answeredMs,
  taken: ({ entry, job, around }) => some(around.byJob.get(job.code), (life) => maybeThen(life, entry)),
  "not-passed": ({ job, member }) => !isPassed(member, job),
  "junior-alone": ({ entry, member, night, around }) =>
    member.junior &&
    ![...night.attending].some((code) => night.members.get(code)?.junior === false) &&
    !around.adults.some((life) => surelyThroughout(life, entry)),
  "drives-another-then": (which) =>
    hasThen(which, (other) => overlap(heldFor(other, which.night), heldFor(which.job, which.night))),
  "walk-too-short": (which) => hasThen(which, (other) => !leavesTimeToWalk(other, which.job, which.night)),
  // the made club has no such rule
  "second-claim-too-early": () => false,
  "handset-not-usable": (which) => candidates(which).every((handset) => !isUsable(handset, which.job)),
  "handset-taken": (which) =>
    candidates(which)
      .filter((handset) => isUsable(handset, which.job))
      .every((handset) => maybeNotToBeHad(handset, which)) &&
    candidates(which).some((handset) => isUsable(handset, which.job)),
};

const some = (lives: readonly Life[] | undefined, is: (life: Life) => boolean) => lives?.some(is) ?? false;

function hasThen({ entry, night, around }: Case, clash: (other: JobFact) => boolean): boolean {
  return some(around.byMember.get(entry.member), (life) => {
    const other = night.jobs.get(life.job);
    return other !== undefined && clash(other) && maybeThen(life, entry);
  });
}

function candidates({ entry, night }: Case) {
  return [...night.handsets.values()].filter(
    ({ code }) => entry.handset === undefined || code === entry.handset,
  );
}

/** Somebody may have had it then, or with all who may have had it, its charge would not have lasted. */
function maybeNotToBeHad(handset: HandsetFact, { entry, job, night, around }: Case): boolean {
  const others = (around.byHandset.get(handset.code) ?? [])
    .filter((life) => maybeThen(life, entry))
    .flatMap((life) => night.jobs.get(life.job) ?? []);
  const taken = others.some((other) => overlap(heldFor(other, night), heldFor(job, night)));
  return taken || !lasts(handset, [...others, job], night);
}

function lookAround(lives: readonly Life[], { members }: NightFacts): Around {
  return {
    byJob: groupBy(lives, (life) => life.job),
    byMember: groupBy(lives, (life) => life.member),
    byHandset: groupBy(lives, (life) => life.handset),
    adults: lives.filter(({ member }) => members.get(member)?.junior === false),
  };
}
