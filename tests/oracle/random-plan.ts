import fc from "fast-check";
import type {
  PathEntry,
  PlannerPolicy,
  Problem,
  Section,
  SectionControl,
  Train,
} from "../../src/planner/problem.ts";
import { PLAIN, plainDecoder } from "../planner/plain-records.ts";

/** What a plan is made of at random. Times are tiny so that oracles can look at every millisecond. */
export interface PlanShape {
  /** How the sections are run: a digital part, then changeovers, then an analog part; or all of one kind. */
  readonly controls: "digital" | "analog" | "mixed";
  readonly mostTrains: number;
  readonly mostSections: number;
  readonly outputs: number;
}

/** Whole numbers, both ends included; what fast-check can shrink. */
type Draw = (least: number, most: number) => number;

/** Any plan of the shape. Shrinks towards the least of every choice; the plan itself is what a failure prints. */
export function randomPlan(shape: PlanShape): fc.Arbitrary<Problem> {
  return fc.array(fc.nat(1_000_000), { minLength: 600, maxLength: 600 }).map((numbers) => {
    let next = 0;
    const draw: Draw = (least, most) => least + ((numbers[next++] ?? 0) % (most - least + 1));
    return makePlan(shape, draw);
  });
}

function makePlan(shape: PlanShape, draw: Draw): Problem {
  const pick = <T>(...choices: readonly T[]): T => choices[draw(0, choices.length - 1)] as T;
  const slot = { startMs: pick(0, 0, -20, 15), endMs: pick(300, 400, 500) };
  const policy: PlannerPolicy = {
    ...PLAIN.policy,
    inrushMs: pick(50, 100, 200),
    setUpMs: pick(0, 1, 5, 12),
    releaseMs: pick(0, 1, 5, 9),
    releaseDwellMs: pick(0, 10, 30),
    pickUpMs: pick(0, 5, 20, 60),
    handInMs: pick(0, 3, 15, 30),
    reserve: pick(0, 0.2, 0.25),
  };
  const sections = makeSections(shape, draw);
  const links = sections.slice(1).map((_, at) => ({ from: at, to: at + 1, oneWay: false }));
  for (let extra = draw(0, 3); extra > 0; extra--)
    links.push({
      from: draw(0, sections.length - 1),
      to: draw(0, sections.length - 1),
      oneWay: draw(0, 1) === 1,
    });
  const locomotives = Array.from({ length: 5 }, (_, at) => ({
    ...PLAIN.locomotive,
    decoder: plainDecoder(at),
    code: `loco-${at}`,
    lengthMm: draw(1, 25),
    runningMa: draw(0, 6) * 50,
    standingMa: draw(0, 3) * 20,
    stallMa: draw(0, 12) * 50,
    inrushMa: draw(0, 10) * 70,
    maxSpeedKmh: 0,
  }));
  const rakes = Array.from({ length: 3 }, (_, at) => ({
    ...PLAIN.rake,
    code: `rake-${at}`,
    lightingMa: draw(0, 2) * 30,
    inrushMa: draw(0, 3) * 60,
  }));
  const before: Omit<Problem, "trains"> = {
    ...PLAIN.problem,
    scale: 87,
    policy,
    slot,
    sections,
    links,
    commandSystems: [
      { ...PLAIN.commandSystem, code: "S", handsets: draw(0, 3) },
      { ...PLAIN.commandSystem, code: "T", handsets: draw(0, 2) },
    ],
    supplies: [
      {
        ...PLAIN.supply,
        code: "A",
        commandSystem: 0,
        ratingMa: draw(2, 14) * 50,
        accessoryMa: draw(0, 2) * 30,
      },
      { ...PLAIN.supply, code: "B", commandSystem: draw(0, 1), ratingMa: draw(2, 14) * 50, accessoryMa: 0 },
    ],
    districts: Array.from({ length: 3 }, (_, at) => ({
      ...PLAIN.district,
      code: `D${at}`,
      supply: draw(0, 1),
      breakerMa: draw(1, 12) * 50,
    })),
    controllers: [
      { code: "K", transformerMa: draw(2, 20) * 50, accessoryMa: draw(0, 2) * 25 },
      { code: "L", transformerMa: draw(2, 20) * 50, accessoryMa: 0 },
    ],
    outputs: Array.from({ length: shape.outputs }, (_, at) => ({
      code: `O${at}`,
      controller: draw(0, 1),
      ratingMa: draw(2, 12) * 50,
    })),
    locomotives,
    rakes,
  };
  const trains: Train[] = [];
  for (let count = draw(1, shape.mostTrains); count > 0; count--)
    trains.push(makeTrain(before, trains, draw));
  return { ...before, trains };
}

function makeSections(shape: PlanShape, draw: Draw): Section[] {
  const count = draw(3, shape.mostSections);
  const firstChangeover = draw(0, count - 1);
  const firstAnalog = firstChangeover + draw(0, 2);
  const controlAt = (at: number): SectionControl => {
    if (draw(0, 60) === 0) return "dead";
    if (shape.controls !== "mixed") return draw(0, 40) === 0 ? "changeover" : shape.controls;
    return at < firstChangeover ? "digital" : at < firstAnalog ? "changeover" : "analog";
  };
  return Array.from({ length: count }, (_, at) => {
    const control = controlAt(at);
    const reach = Array.from({ length: shape.outputs }, (_, output) => output);
    return {
      ...PLAIN.section,
      code: `s${at}`,
      lengthMm: draw(0, 3) === 0 ? draw(1, 8) : draw(10, control === "changeover" ? 140 : 70),
      place: draw(-1, 2),
      control,
      shared: draw(0, 3) === 0,
      district: control === "digital" || control === "changeover" ? draw(draw(0, 20) === 0 ? -1 : 0, 2) : -1,
      outputs: control === "analog" || control === "changeover" ? reach.filter(() => draw(0, 3) > 0) : [],
      maxSpeedKmh: 0,
      mustClear: draw(0, 2) === 0,
      handStaging: draw(0, 4) === 0,
    };
  });
}

type Layout = Omit<Problem, "trains">;

/** A train that may take the stock of an earlier one, from where that left it or from elsewhere. */
function makeTrain(layout: Layout, earlier: readonly Train[], draw: Draw): Train {
  const taken = draw(0, 2) > 0 ? earlier[draw(0, Math.max(0, earlier.length - 1))] : undefined;
  const power = taken
    ? taken.power.filter(() => draw(0, 3) > 0)
    : layout.locomotives.flatMap((_, locomotive) =>
        draw(0, 4) === 0 ? [{ locomotive, atRear: draw(0, 2) === 0 }] : [],
      );
  const rakes = taken ? taken.rakes : layout.rakes.flatMap((_, rake) => (draw(0, 4) === 0 ? [rake] : []));
  const engines = power.reduce(
    (sum, { locomotive }) => sum + (layout.locomotives[locomotive]?.lengthMm ?? 0),
    0,
  );
  const arrives = taken?.path.at(-1)?.arriveMs ?? 0;
  const departs = taken && draw(0, 4) > 0 ? arrives + draw(0, 80) : draw(-5, 150);
  const from = taken && draw(0, 3) > 0 ? taken.path.at(-1)?.section : undefined;
  return {
    ...PLAIN.train,
    code: `t${earlier.length}`,
    lengthMm: Math.max(1, engines + (draw(0, 2) === 0 ? 0 : draw(0, 90))),
    power,
    rakes,
    path: makePath(layout, from ?? draw(0, layout.sections.length - 1), departs, draw),
    placedMs: draw(0, 4) === 0 ? draw(-30, 200) : null,
    removedMs: draw(0, 4) === 0 ? draw(50, 400) : null,
  };
}

/**
 * A walk along the links, forth and back, with calls and passes; now and then with a jump, or with times that run
 * backwards.
 */
function makePath(layout: Layout, from: number, departs: number, draw: Draw): PathEntry[] {
  const length = draw(2, 7);
  const path: PathEntry[] = [{ section: from, arriveMs: null, departMs: departs }];
  let ms = departs;
  for (let at = 1; at < length; at++) {
    const section = step(layout, path.at(-1)?.section as number, path.at(-2)?.section ?? -1, draw);
    const last = at === length - 1;
    const changeover = layout.sections[section]?.control === "changeover";
    if (!last && !changeover && draw(0, 2) === 0) {
      path.push({ section, arriveMs: null, departMs: null });
      continue;
    }
    const arriveMs = ms + (draw(0, 60) === 0 ? draw(-5, 0) : draw(1, 60));
    const dwell = draw(0, 3) === 0 ? 0 : draw(0, 1) === 0 ? draw(1, 12) : draw(10, 60);
    ms = arriveMs + dwell;
    path.push({ section, arriveMs, departMs: last ? null : ms });
  }
  return path;
}

function step(layout: Layout, from: number, before: number, draw: Draw): number {
  if (draw(0, 25) === 0) return draw(0, layout.sections.length - 1);
  const next = layout.links.flatMap((link) => [
    ...(link.from === from ? [link.to] : []),
    ...(link.to === from && !link.oneWay ? [link.from] : []),
  ]);
  const onwards = next.filter((section) => section !== before);
  const choices = onwards.length > 0 && draw(0, 4) > 0 ? onwards : next;
  return choices[draw(0, Math.max(0, choices.length - 1))] ?? from;
}
