import type { NightFacts } from "./facts.ts";
import type { Entry, HadClaim } from "./journal.ts";
import { readLives } from "./lives.ts";

/**
 * Where the tables at the end and the answers do not agree: what was accepted must be there, what was given back gone,
 * and nothing there that nobody was told of. Every post must have been answered in the end.
 */
export function judgeEnding(entries: readonly Entry[], night: NightFacts): string[] {
  const lives = readLives(entries);
  const told = new Map(lives.map((life) => [life.id, life]));
  const stored = new Map(night.claims.map((claim) => [claim.id, claim]));
  const kept = lives.filter(({ diesByMs }) => diesByMs === Number.POSITIVE_INFINITY);
  return [
    ...entries
      .filter(({ status }) => status === 0)
      .map(({ act, member, job, sendings }) => `${act} of ${job} by ${member}: no answer to ${sendings}`),
    ...kept.filter(({ id }) => !stored.has(id)).map((life) => `accepted, but not there: ${say(life)}`),
    ...lives
      .filter(({ id, diesByMs }) => diesByMs !== Number.POSITIVE_INFINITY && stored.has(id))
      .map((life) => `given back, but there: ${say(life)}`),
    ...night.claims.filter(({ id }) => !told.has(id)).map((claim) => `there, but told nobody: ${say(claim)}`),
    ...kept.flatMap((life) => {
      const now = stored.get(life.id);
      return now && say(now) !== say(life) ? [`accepted as ${say(life)}, but there as ${say(now)}`] : [];
    }),
  ];
}

const say = ({ job, member, handset }: HadClaim) => `${job} with ${handset} for ${member}`;
