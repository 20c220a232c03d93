import type { ClaimFact, HandsetFact, JobFact, MemberFact, NightFacts } from "./facts.ts";
import { heldFor, isPassed, isUsable, lasts, leavesTimeToWalk, overlap } from "./job-times.ts";

/**
 * Everything that is wrong with a night as its tables hold it, a sentence each; empty for one in which nobody and
 * nothing is booked twice. Looks at every pair of claims, from the paths and the clock, and believes neither the times
 * that the claims were stored with nor any constraint.
 */
export function judgeTables(night: NightFacts): string[] {
  return [
    ...night.claims.flatMap((claim) => faultsOfOne(claim, night)),
    ...night.claims.flatMap((claim, at) =>
      night.claims.slice(at + 1).flatMap((other) => faultsOfTwo(claim, other, night)),
    ),
    ...juniorsAlone(night),
    ...batteriesTooSmall(night),
    ...waitsInVain(night),
  ];
}

function faultsOfOne(claim: ClaimFact, night: NightFacts): string[] {
  const { job, member, handset } = named(claim, night);
  const [from, until] = heldFor(job, night);
  const faults: string[] = [];
  if (claim.fromMs !== from || claim.untilMs !== until)
    faults.push(
      `${claim.job} is held from ${claim.fromMs} until ${claim.untilMs}, not ${from} until ${until}`,
    );
  if (!isPassed(member, job)) faults.push(`${claim.member} is not passed for ${claim.job}`);
  if (job.kind === "train" && handset === null) faults.push(`${claim.job} has no handset`);
  if (handset && !isUsable(handset, job)) faults.push(`${handset.code} is no good for ${claim.job}`);
  return faults;
}

function faultsOfTwo(a: ClaimFact, b: ClaimFact, night: NightFacts): string[] {
  const [one, other] = [named(a, night).job, named(b, night).job];
  const together = overlap(heldFor(one, night), heldFor(other, night));
  const faults: string[] = [];
  if (a.job === b.job) faults.push(`${a.job} is ${a.member}'s and ${b.member}'s`);
  if (a.member === b.member && together) faults.push(`${a.member} has ${a.job} and ${b.job} at once`);
  if (a.member === b.member && !together && !leavesTimeToWalk(one, other, night))
    faults.push(`${a.member} can't walk between ${a.job} and ${b.job}`);
  if (a.handset !== null && a.handset === b.handset && together)
    faults.push(`${a.handset} is in ${a.job} and ${b.job} at once`);
  return faults;
}

/** A junior has a train or duty only where an adult has one as well, or comes. */
function juniorsAlone({ claims, members, attending }: NightFacts): string[] {
  const isJunior = (code: string) => members.get(code)?.junior === true;
  const present = [...claims.map(({ member }) => member), ...attending];
  if (present.some((member) => !isJunior(member))) return [];
  return claims.map(({ member, job }) => `${member}, a junior, has ${job} with no adult there`);
}

function batteriesTooSmall(night: NightFacts): string[] {
  return [...night.handsets.values()].flatMap((handset) => {
    const held = night.claims.filter((claim) => claim.handset === handset.code);
    const jobs = held.map((claim) => named(claim, night).job);
    if (lasts(handset, jobs, night)) return [];
    return [`${handset.code} won't last for ${jobs.map(({ code }) => code).join(", ")}`];
  });
}

/** Nobody waits twice for the same, or for what they have. */
function waitsInVain({ queue, claims }: NightFacts): string[] {
  const seen = new Set<string>();
  return queue.flatMap(({ job, member }) => {
    const faults: string[] = [];
    if (seen.has(`${member} ${job}`)) faults.push(`${member} waits twice for ${job}`);
    seen.add(`${member} ${job}`);
    if (claims.some((claim) => claim.job === job && claim.member === member))
      faults.push(`${member} waits for ${job}, which they have`);
    return faults;
  });
}

function named(
  claim: ClaimFact,
  night: NightFacts,
): { job: JobFact; member: MemberFact; handset: HandsetFact | null } {
  const job = night.jobs.get(claim.job);
  const member = night.members.get(claim.member);
  const handset = claim.handset === null ? null : night.handsets.get(claim.handset);
  if (!job || !member || handset === undefined) throw new Error(`claim ${claim.id} names what is not there`);
  return { job, member, handset };
}
