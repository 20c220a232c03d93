import type { NightFacts } from "./facts.ts";
import type { Entry, HadClaim } from "./journal.ts";
import { readTurns, type Turn } from "./lives.ts";

/**
 * Where the tables at the end and the answers do not agree: what was accepted must be there, what was given back gone,
 * and nothing there that nobody was told of. Everything must have been answered in the end.
 */
export function judgeEnding(entries: readonly Entry[], night: NightFacts): string[] {
  const stored = new Map(night.claims.map((claim) => [claim.id, claim]));
  const told = readTurns(entries).map((turns) => ({ id: turns[0]?.claim?.id, turns }));
  const known = new Set(told.map(({ id }) => id));
  return [
    ...entries
      .filter(({ status }) => status === 0)
      .map(({ act, member, job, sendings }) => `${act} of ${job} by ${member}: no answer to ${sendings}`),
    ...told.flatMap(({ id, turns }) => judgeOne(turns, stored.get(id ?? ""))),
    ...night.claims
      .filter(({ id }) => !known.has(id))
      .map((claim) => `there, but told nobody: ${say(claim)}`),
  ];
}

function judgeOne(turns: readonly Turn[], stored: HadClaim | undefined): string[] {
  const [last] = turns.slice(-1);
  if (last?.claim === null) return stored ? [`given back, but there: ${say(stored)}`] : [];
  // of two trades at the same time either may have been the last
  const maybeLast = turns.filter(
    ({ entry }) => !turns.some((other) => other.entry.sentMs > entry.answeredMs),
  );
  const states = maybeLast.flatMap(({ claim }) => (claim ? [say(claim)] : []));
  if (!stored) return [`accepted, but not there: ${states.join(" or ")}`];
  return states.includes(say(stored))
    ? []
    : [`accepted as ${states.join(" or ")}, but there as ${say(stored)}`];
}

const say = ({ job, member, handset }: HadClaim) => `${job} with ${handset} for ${member}`;
