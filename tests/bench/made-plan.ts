import { check } from "../../src/planner/check.ts";
import type { Locomotive, PathEntry, Problem, Rake, Train } from "../../src/planner/problem.ts";
import { PLAIN, plainDecoder } from "../planner/plain-records.ts";
import { type MadeLine, type MadeRailway, makeRailway } from "./made-railway.ts";
import { createRandom, type Random } from "./random.ts";

/** Real seconds of session that each train of a line brings with it: keeps the lines about a quarter full. */
const SECONDS_A_TRAIN = 400;
const TRIES = 80;
/** Share of the trains that are moved out of the workable timetable. */
const MOVED = 0.05;

/**
 * A made-up night: trains laid one by one where they clash with none before, then some moved by a few minutes so
 * that there is something to find. About ten sections a train. Half of the trains go back with the stock of one
 * before; the rest is placed and removed by hand. Breakers and handsets stand a little above what the workable
 * timetable needs.
 */
export function makePlan(seed: number, trains: number, sections: number): Problem {
  const random = createRandom(seed);
  const railway = makeRailway(random, sections);
  const planner = createYard(random, railway, trains);
  while (planner.trains.length < trains) planner.addTrain();
  const workable = toProblem(railway, planner);
  const limited = withLimits(random, workable);
  return { ...limited, trains: limited.trains.map((train) => moveSome(random, train)) };
}

interface Yard {
  readonly trains: Train[];
  readonly locomotives: Locomotive[];
  readonly rakes: Rake[];
  readonly endMs: number;
  addTrain(): void;
}

/** A working that can still go back: where its stock is, since when. */
interface Arrived {
  readonly train: Train;
  readonly line: MadeLine;
  readonly up: boolean;
  readonly atMs: number;
}

interface Laid {
  readonly path: PathEntry[];
  readonly blocked: { section: number; fromMs: number; toMs: number }[];
}

function createYard(random: Random, railway: MadeRailway, count: number): Yard {
  const taken: { fromMs: number; toMs: number }[][] = railway.sections.map(() => []);
  const endMs = Math.ceil((count / railway.lines.length) * SECONDS_A_TRAIN * 1_000);
  const yard: Yard = { trains: [], locomotives: [], rakes: [], endMs, addTrain };
  const arrived: Arrived[] = [];

  function isFree({ blocked }: Laid): boolean {
    return blocked.every(({ section, fromMs, toMs }) =>
      (taken[section] as (typeof taken)[number]).every(
        (other) => other.toMs <= fromMs || toMs <= other.fromMs,
      ),
    );
  }

  function addTrain(): void {
    const back = random.chance(0.5) ? arrived.shift() : undefined;
    const line = back?.line ?? random.pick(railway.lines);
    const up = back === undefined ? random.chance(0.5) : !back.up;
    const stock = back?.train ?? makeStock(random, yard);
    let laid = layPath(random, railway, line, up, stock.lengthMm, endMs, back);
    for (let i = 0; i < TRIES && !isFree(laid); i++)
      laid = layPath(random, railway, line, up, stock.lengthMm, endMs, back);
    for (const { section, fromMs, toMs } of laid.blocked) taken[section]?.push({ fromMs, toMs });
    const departMs = laid.path[0]?.departMs as number;
    const arriveMs = laid.path.at(-1)?.arriveMs as number;
    const train: Train = {
      ...stock,
      code: `N${yard.trains.length}`,
      path: laid.path,
      placedMs: departMs - 30_000,
      removedMs: arriveMs + 30_000,
    };
    yard.trains.push(train);
    if (back === undefined) arrived.push({ train, line, up, atMs: arriveMs });
  }
  return yard;
}

function makeStock(random: Random, yard: Yard): Train {
  const addLocomotive = (atRear: boolean) => {
    yard.locomotives.push({
      ...PLAIN.locomotive,
      decoder: plainDecoder(yard.locomotives.length),
      code: `L${yard.locomotives.length}`,
      lengthMm: random.whole(120, 280),
      runningMa: random.whole(150, 500),
      standingMa: random.whole(30, 150),
      maxSpeedKmh: random.chance(0.5) ? 80 : 0,
    });
    return { locomotive: yard.locomotives.length - 1, atRear };
  };
  const power = [addLocomotive(false)];
  if (random.chance(0.15)) power.push(addLocomotive(true));
  yard.rakes.push({
    ...PLAIN.rake,
    code: `R${yard.rakes.length}`,
    lightingMa: random.chance(0.3) ? random.whole(20, 120) : 0,
  });
  const lengthMm = random.whole(900, 1_800);
  return {
    ...PLAIN.train,
    code: "",
    lengthMm,
    power,
    rakes: [yard.rakes.length - 1],
    path: [],
    placedMs: null,
    removedMs: null,
  };
}

function layPath(
  random: Random,
  railway: MadeRailway,
  line: MadeLine,
  up: boolean,
  lengthMm: number,
  endMs: number,
  back: Arrived | undefined,
): Laid {
  const order = up ? [0, 1, 2, 3] : [3, 2, 1, 0];
  const start = back?.train.path.at(-1)?.section ?? random.pick(line.roads[order[0] as number] as number[]);
  const sections = [start];
  const stops = [0];
  for (let i = 1; i < 4; i++) {
    const gap = Math.min(order[i - 1] as number, order[i] as number);
    sections.push(...(up ? (line.up[gap] as number[]) : [...(line.down[gap] as number[])].reverse()));
    sections.push(random.pick(line.roads[order[i] as number] as number[]));
    if (i === 3 || random.chance(0.6)) stops.push(sections.length - 1);
  }
  const departMs = back
    ? back.atMs + random.whole(45_000, 300_000)
    : random.whole(60_000, Math.max(60_000, endMs - 400_000));
  return timePath(random, railway, { sections, stops, departMs, lengthMm, sinceMs: back?.atMs });
}

interface Route {
  readonly sections: readonly number[];
  readonly stops: readonly number[];
  readonly departMs: number;
  readonly lengthMm: number;
  readonly sinceMs: number | undefined;
}

/** One speed all the way, dwells at the stops; blocking times as the train leaves them, by plain proportion. */
function timePath(random: Random, railway: MadeRailway, route: Route): Laid {
  const { sections, stops, departMs, lengthMm } = route;
  const mmPerMs = random.whole(70, 110) / 1_000;
  const lengths = sections.map((section) => railway.sections[section]?.lengthMm ?? 0);
  const ends = lengths.map((_, i) => lengths.slice(0, i + 1).reduce((a, b) => a + b, 0));
  const startMm = ends[0] as number;
  const dwells = stops
    .map((entry) => ({ mm: ends[entry] as number, ms: random.whole(15_000, 40_000) }))
    .slice(1, -1);
  const timeAt = (mm: number, past: (dwellMm: number) => boolean) =>
    Math.round(
      departMs + (mm - startMm) / mmPerMs + dwells.reduce((sum, d) => sum + (past(d.mm) ? d.ms : 0), 0),
    );
  const arrive = (entry: number) => timeAt(ends[entry] as number, (mm) => mm < (ends[entry] as number));
  const leave = (entry: number) => timeAt(ends[entry] as number, (mm) => mm <= (ends[entry] as number));
  const last = sections.length - 1;
  const path = sections.map((section, entry) => ({
    section,
    arriveMs: entry > 0 && stops.includes(entry) ? arrive(entry) : null,
    departMs: entry < last && stops.includes(entry) ? leave(entry) : null,
  }));
  const blocked = sections.map((section, entry) => {
    const tailMm = (ends[entry] as number) + lengthMm;
    const stands = tailMm > (ends[last] as number);
    const sinceMs = route.sinceMs ?? departMs - 30_000;
    return {
      section,
      fromMs: entry === 0 ? sinceMs : leaveBefore(entry),
      toMs: stands ? arrive(last) + 30_000 : timeAt(tailMm, (mm) => mm < tailMm) + 5_000,
    };
  });
  function leaveBefore(entry: number): number {
    return leave(entry - 1) - 5_000;
  }
  return { path, blocked };
}

function toProblem(railway: MadeRailway, yard: Yard): Problem {
  const { sections, links, districts, supplies } = railway;
  return {
    ...PLAIN.problem,
    scale: 87,
    policy: {
      ...PLAIN.policy,
      setUpMs: 5_000,
      releaseMs: 5_000,
      releaseDwellMs: 30_000,
      pickUpMs: 60_000,
      handInMs: 30_000,
      reserve: 0.2,
    },
    slot: { startMs: 0, endMs: yard.endMs },
    sections,
    links,
    commandSystems: [
      { code: "A", handsets: 100_000, ...PLAIN.commandSystem },
      { code: "B", handsets: 100_000, ...PLAIN.commandSystem },
    ],
    supplies,
    districts,
    controllers: [],
    outputs: [],
    locomotives: yard.locomotives,
    rakes: yard.rakes,
    trains: yard.trains,
  };
}

function withLimits(random: Random, workable: Problem): Problem {
  const { districts, supplies, handsets } = check(workable);
  const above = (ma: number) => Math.max(1_000, Math.round(ma * (1.25 + 0.5 * random.next())));
  return {
    ...workable,
    districts: workable.districts.map((district, i) => ({
      ...district,
      breakerMa: above(districts[i]?.peakMa ?? 0),
    })),
    supplies: workable.supplies.map((supply, i) => ({
      ...supply,
      ratingMa: above(supplies[i]?.peakMa ?? 0),
    })),
    commandSystems: workable.commandSystems.map((system, i) => ({
      ...system,
      handsets: (handsets[i]?.peak ?? 0) + random.whole(0, 1),
    })),
  };
}

function moveSome(random: Random, train: Train): Train {
  if (!random.chance(MOVED)) return train;
  const byMs = random.pick([-1, 1]) * random.whole(60_000, 240_000);
  const moved = (ms: number | null) => (ms === null ? null : ms + byMs);
  return {
    ...train,
    path: train.path.map((entry) => ({
      ...entry,
      arriveMs: moved(entry.arriveMs),
      departMs: moved(entry.departMs),
    })),
    placedMs: moved(train.placedMs),
    removedMs: moved(train.removedMs),
  };
}
