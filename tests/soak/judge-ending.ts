import type { NightFacts } from "./facts.ts";
import type { Entry, HadClaim } from "./journal.ts";
import { readLives } from "./lives.ts";

/**
 * Where the tables at the end and the answers do not agree: what was accepted must be there, what was given back gone,
 * and nothing there that nobody was told of. Everything must have been answered in the end.
 */
export function judgeEnding(entries: readonly Entry[], night: NightFacts): string[] {
  const kept = new Map(
    readLives(entries)
      .filter(({ diesByMs }) => diesByMs === Number.POSITIVE_INFINITY)
      .map((life) => [life.id, life]),
  );
  const gone = new Set(entries.flatMap((entry) => entry.gone ?? []));
  const stored = new Map(night.claims.map((claim) => [claim.id, claim]));
  return [
    ...entries
      .filter(({ status }) => status === 0)
      .map(({ act, member, job, sendings }) => `${act} of ${job} by ${member}: no answer to ${sendings}`),
    ...[...kept.values()]
      .filter(({ id }) => !stored.has(id))
      .map((life) => `accepted, but not there: ${say(life)}`),
    ...night.claims.flatMap((claim) => {
      const life = kept.get(claim.id);
      if (gone.has(claim.id)) return [`given back, but there: ${say(claim)}`];
      if (!life) return [`there, but told nobody: ${say(claim)}`];
      return say(claim) === say(life) ? [] : [`accepted as ${say(life)}, but there as ${say(claim)}`];
    }),
  ];
}

const say = ({ job, member, handset }: HadClaim) => `${job} with ${handset} for ${member}`;
