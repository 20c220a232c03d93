import type { Demand } from "../analog/demand.ts";
import type { Plan } from "../compile-plan.ts";
import { findUnusable, type HandsetRecord } from "../people/handset-fit.ts";
import type { Handset, Problem } from "../problem.ts";
import type { Needs } from "./handset-need.ts";

/** A train's need for a handset of one command system, and those that would do for it. */
export interface HandsetDemand extends Demand {
  /** Somebody has the one candidate for it already: whatever is wrong with that is told of apart. */
  readonly isClaimed: boolean;
}

export interface SystemDemands {
  /** In order of train. */
  readonly demands: readonly HandsetDemand[];
  /** Needs that no handset of the system could serve. */
  readonly unserved: readonly HandsetDemand[];
  /** Whether some handset does for some need and not for another, or is taken: then counting them is not enough. */
  readonly isChoosy: boolean;
}

/**
 * What each train that runs under a command system asks of its handsets: ready, usable at every place where it calls or
 * passes under that system, and charged for at least this train. Design section 7. Cost: needs × handsets × places.
 */
export function handsetDemands(plan: Plan, needs: Needs, system: number): SystemDemands {
  const { problem } = plan;
  const ready = problem.handsets.flatMap((handset, at) =>
    handset.ready && handset.commandSystem === system ? [at] : [],
  );
  const claimed = claimedHandsets(problem, system);
  const demands: HandsetDemand[] = [];
  const unserved: HandsetDemand[] = [];
  let isChoosy = false;
  for (let i = 0; i < needs.count; i++) {
    if (needs.system[i] !== system) continue;
    const span = { startMs: needs.fromMs[i] as number, endMs: needs.toMs[i] as number };
    const train = needs.train[i] as number;
    const own = claimed.get(train);
    const along = placesAlong(plan, train, system);
    const candidates =
      own !== undefined
        ? [own]
        : ready.filter(
            (at) => lasts(problem, at, span.endMs - span.startMs) && reaches(problem, at, system, along),
          );
    const demand = { ...span, train, candidates, isClaimed: own !== undefined };
    (candidates.length === 0 ? unserved : demands).push(demand);
    if (candidates.length < ready.length) isChoosy = true;
  }
  return { demands, unserved, isChoosy };
}

/** The handset of the system that somebody has for a train, by train. */
function claimedHandsets({ crew, handsets }: Problem, system: number): Map<number, number> {
  return new Map(
    crew.turns.flatMap(({ train, handset }) =>
      handsets[handset]?.commandSystem === system ? [[train, handset] as const] : [],
    ),
  );
}

/** Whether a charge lasts for one train; for all of an evening's it is the search that asks. */
function lasts({ handsets }: Problem, at: number, ms: number): boolean {
  const { batteryMs } = handsets[at] as Handset;
  return batteryMs === null || ms <= batteryMs;
}

/** Whether a handset is of the system and can be used at all these places. */
export function reaches(
  { handsets, places, commandSystems }: Problem,
  at: number,
  system: number,
  along: readonly string[],
): boolean {
  const { code, commandSystem, kind, places: usable, batteryMs } = handsets[at] as Handset;
  const record: HandsetRecord = {
    code,
    commandSystem: commandSystems[commandSystem]?.code ?? "",
    kind,
    places: usable.map((place) => places[place]?.code ?? ""),
    batteryMs,
    // whether it is ready is looked at apart
    ready: true,
  };
  return findUnusable(record, { commandSystem: commandSystems[system]?.code ?? "", places: along }) === null;
}

/** The places at which a train calls or passes on digital sections of a system. Cost: linear in its path. */
export function placesAlong(
  { problem, motions, parts, track }: Plan,
  train: number,
  system: number,
): string[] {
  const row = motions.firstRow[train] as number;
  const along = new Set<string>();
  const end = parts.firstPart[train + 1] as number;
  for (let part = parts.firstPart[train] as number; part < end; part++) {
    if (parts.analog[part] === 1) continue;
    const last = row + (parts.lastEntry[part] as number);
    for (let at = row + (parts.firstEntry[part] as number); at <= last; at++) {
      const section = motions.section[at] as number;
      if (track.commandSystem[section] !== system) continue;
      const place = problem.places[problem.sections[section]?.place ?? -1]?.code;
      if (place !== undefined) along.add(place);
    }
  }
  return [...along];
}
