import type { Interval, Problem, Section, Train } from "../../src/planner/problem.ts";
import { PLAIN, plainDecoder } from "../planner/plain-records.ts";

/** The same plan, told differently: what the laws compare. */

/** Everything `byMs` later. */
export function shifted(problem: Problem, byMs: number): Problem {
  const later = (ms: number | null) => (ms === null ? null : ms + byMs);
  return {
    ...problem,
    slot: shiftedSpan(problem.slot, byMs),
    trains: problem.trains.map((train) => ({
      ...train,
      placedMs: later(train.placedMs),
      removedMs: later(train.removedMs),
      path: train.path.map((entry) => ({
        ...entry,
        arriveMs: later(entry.arriveMs),
        departMs: later(entry.departMs),
      })),
    })),
  };
}

export function shiftedSpan({ startMs, endMs }: Interval, byMs: number): Interval {
  return { startMs: startMs + byMs, endMs: endMs + byMs };
}

/** Where each old position is in a list turned round and rotated by `turn`. */
export function mixUp(length: number, turn: number): number[] {
  const order = Array.from({ length }, (_, at) => at).reverse();
  return order.map((_, at) => order[(at + turn) % length] as number);
}

/** Trains in another order: `to[old]` is the new position. */
export function withTrainsAt(problem: Problem, to: readonly number[]): Problem {
  return { ...problem, trains: moved(problem.trains, to) };
}

/** Sections in another order, and the links listed the other way about. */
export function withSectionsAt(problem: Problem, to: readonly number[]): Problem {
  const at = (section: number) => to[section] as number;
  return {
    ...problem,
    sections: moved(problem.sections, to),
    links: problem.links.map((link) => ({ ...link, from: at(link.from), to: at(link.to) })).reverse(),
    trains: problem.trains.map((train) => ({
      ...train,
      path: train.path.map((entry) => ({ ...entry, section: at(entry.section) })),
    })),
  };
}

/** Outputs in another order. */
export function withOutputsAt(problem: Problem, to: readonly number[]): Problem {
  return {
    ...problem,
    outputs: moved(problem.outputs, to),
    sections: problem.sections.map((section) => ({
      ...section,
      outputs: section.outputs.map((output) => to[output] as number),
    })),
  };
}

/** Districts in another order. */
export function withDistrictsAt(problem: Problem, to: readonly number[]): Problem {
  return {
    ...problem,
    districts: moved(problem.districts, to),
    sections: problem.sections.map((section) => ({
      ...section,
      district: section.district < 0 ? -1 : (to[section.district] as number),
    })),
  };
}

function moved<T>(list: readonly T[], to: readonly number[]): T[] {
  const result: T[] = [];
  for (const [at, item] of list.entries()) result[to[at] as number] = item;
  return result;
}

/** Every code another. */
export function renamed(problem: Problem): Problem {
  const rename = <T extends { readonly code: string }>(list: readonly T[]) =>
    list.map((item, at) => ({ ...item, code: `${list.length - at}/${item.code.toUpperCase()}` }));
  return {
    ...problem,
    sections: rename(problem.sections),
    commandSystems: rename(problem.commandSystems),
    supplies: rename(problem.supplies),
    districts: rename(problem.districts),
    controllers: rename(problem.controllers),
    outputs: rename(problem.outputs),
    locomotives: rename(problem.locomotives),
    rakes: rename(problem.rakes),
    trains: rename(problem.trains),
  };
}

/** One more of everything that nothing uses. */
export function withUseless(problem: Problem): Problem {
  const section: Section = {
    ...PLAIN.section,
    code: "useless section",
    lengthMm: 1,
    place: -1,
    control: "digital",
    shared: false,
    district: problem.districts.length,
    outputs: [],
    maxSpeedKmh: 1,
    mustClear: true,
    handStaging: true,
  };
  const [code, here] = ["useless", problem.sections.length];
  return {
    ...problem,
    sections: [...problem.sections, section],
    links: [...problem.links, { from: here, to: here, oneWay: false }, { from: 0, to: here, oneWay: false }],
    commandSystems: [
      ...problem.commandSystems,
      { ...PLAIN.commandSystem, code: `${code} system`, handsets: 0 },
    ],
    supplies: [
      ...problem.supplies,
      {
        ...PLAIN.supply,
        code: `${code} supply`,
        commandSystem: problem.commandSystems.length,
        ratingMa: 1,
        accessoryMa: 0,
      },
    ],
    districts: [
      ...problem.districts,
      { ...PLAIN.district, code: `${code} district`, supply: problem.supplies.length, breakerMa: 1 },
    ],
    controllers: [...problem.controllers, { code: `${code} controller`, transformerMa: 1, accessoryMa: 0 }],
    outputs: [
      ...problem.outputs,
      { code: `${code} output`, controller: problem.controllers.length, ratingMa: 1 },
    ],
    locomotives: [
      ...problem.locomotives,
      {
        ...PLAIN.locomotive,
        decoder: plainDecoder(9_000),
        code: `${code} engine`,
        lengthMm: 9,
        runningMa: 999,
        standingMa: 999,
        maxSpeedKmh: 1,
      },
    ],
    rakes: [...problem.rakes, { ...PLAIN.rake, code: `${code} rake`, lightingMa: 999 }],
  };
}

/**
 * Section `at` in two, `firstMm` and the rest as every path meets them; the second keeps the position, the first
 * comes last in the list. A train that starts in the section starts in its second piece.
 */
export function split(problem: Problem, at: number, firstMm: number): Problem {
  const whole = problem.sections[at] as Section;
  const first = problem.sections.length;
  return {
    ...problem,
    sections: [
      ...problem.sections.map((section, i) =>
        i === at ? { ...section, lengthMm: whole.lengthMm - firstMm } : section,
      ),
      { ...whole, code: `${whole.code} first`, lengthMm: firstMm },
    ],
    links: [
      ...problem.links,
      ...problem.links.map((link) => ({
        ...link,
        from: link.from === at ? first : link.from,
        to: link.to === at ? first : link.to,
      })),
      ...problem.links.flatMap((link) => (link.to === at ? [{ ...link, to: first }] : [])),
      { from: first, to: at, oneWay: false },
    ],
    trains: problem.trains.map(
      (train): Train => ({
        ...train,
        path: train.path.flatMap((entry, i) =>
          entry.section === at && i > 0
            ? [{ section: first, arriveMs: null, departMs: null }, entry]
            : [entry],
        ),
      }),
    ),
  };
}
