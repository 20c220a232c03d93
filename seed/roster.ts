import type { z } from "zod";
import type { rosterDocument } from "../shared/documents.ts";
import type { decoder, locomotive, rake } from "../shared/roster.ts";
import type { FigureSource } from "../shared/vocabulary.ts";

type Locomotive = z.input<typeof locomotive>;
type Rake = z.input<typeof rake>;

const MEASURED = "measured" satisfies FigureSource;
const LEAFLET = "leaflet" satisfies FigureSource;
const RULE: FigureSource = "rule of thumb";

/**
 * @param amps running, standing, stall and inrush, mA
 * @param sources of the four figures in the same order; the last one holds for the rest
 */
function engine(
  code: string,
  name: string,
  lengthMm: number,
  amps: readonly [running: number, standing: number, stall: number, inrush: number],
  sources: readonly FigureSource[],
  more: Partial<Locomotive> = {},
): Locomotive {
  const source = (i: number) => sources[Math.min(i, sources.length - 1)] ?? RULE;
  const [running, standing, stall, inrush] = amps.map((ma, i) => ({ ma, source: source(i) })) as [
    Locomotive["running"],
    Locomotive["standing"],
    Locomotive["stall"],
    Locomotive["inrush"],
  ];
  return { code, name, lengthMm, running, standing, stall, inrush, ...more };
}

/**
 * Currents in mA: common practice for H0 (can motor 100–500 running, open-frame 400–1,000), no standard gives any. An
 * engine with a decoder takes no more when it stalls than its decoder lets through; the visitor's has no such limit.
 */
const locomotives: Locomotive[] = [
  engine("4601", "Express engine Lady Ambrel", 260, [380, 140, 700, 450], [MEASURED], { maxSpeedKmh: 120 }),
  engine("4602", "Express engine Sir Tobit", 260, [360, 130, 700, 430], [MEASURED], { maxSpeedKmh: 120 }),
  engine("4603", "Mixed-traffic engine", 240, [330, 110, 700, 400], [MEASURED, LEAFLET], {
    maxSpeedKmh: 100,
  }),
  engine("D201", "Diesel, blue", 220, [420, 150, 700, 500], [MEASURED, MEASURED, LEAFLET], {
    maxSpeedKmh: 120,
  }),
  engine("D202", "Diesel, green", 220, [400, 150, 700, 500], [LEAFLET], { maxSpeedKmh: 120 }),
  engine("D203", "Light diesel", 180, [300, 120, 700, 420], [LEAFLET, RULE], { maxSpeedKmh: 90 }),
  engine("2801", "Heavy goods engine", 240, [350, 120, 700, 420], [MEASURED], { maxSpeedKmh: 80 }),
  engine("2802", "Goods engine", 230, [340, 110, 700, 400], [MEASURED, LEAFLET], { maxSpeedKmh: 80 }),
  engine("2803", "Yard engine", 150, [260, 100, 700, 300], [MEASURED], { maxSpeedKmh: 60 }),
  engine("R52", "Railcar", 260, [310, 100, 700, 350], [MEASURED], {
    maxSpeedKmh: 80,
    note: "Interior lights are in its running and standing figures.",
  }),
  engine("T31", "Branch tank engine, black", 130, [420, 100, 700, 350], [MEASURED], { maxSpeedKmh: 80 }),
  engine("T32", "Branch tank engine, green", 130, [500, 100, 700, 400], [LEAFLET], { maxSpeedKmh: 80 }),
  engine("T33", "Branch tank engine, red", 140, [490, 110, 700, 400], [MEASURED, RULE], {
    maxSpeedKmh: 80,
  }),
  engine("V11", "Vintage engine Marigold", 200, [620, 100, 700, 350], [MEASURED, RULE], {
    maxSpeedKmh: 80,
    owner: "Fenella Dunnaby",
    note: "Open-frame motor.",
  }),
  engine("V12", "Vintage engine Celandine", 200, [960, 100, 980, 750], [MEASURED, RULE], {
    maxSpeedKmh: 80,
    owner: "Fenella Dunnaby",
    note: "Open-frame motor.",
  }),
  engine("V13", "Vintage engine Speedwell", 180, [620, 100, 700, 600], [RULE], {
    maxSpeedKmh: 70,
    owner: "Ivo Thackermere",
    note: "Open-frame motor, not measured yet.",
  }),
  engine("V14", "Visiting engine Tamarisk", 200, [420, 100, 2_300, 300], [RULE], {
    maxSpeedKmh: 60,
    owner: "A visitor",
    note: "Its decoder lets the motor take what it will.",
  }),
  engine("V15", "Visiting diesel Juniper", 200, [300, 120, 700, 400], [RULE], {
    maxSpeedKmh: 120,
    owner: "A visitor",
  }),
  engine("V16", "Visiting shunter Hawthorn", 120, [150, 0, 800, 200], [RULE], {
    maxSpeedKmh: 50,
    owner: "A visitor",
    note: "No decoder: never onto digital track.",
  }),
  engine("V17", "Visiting pusher Rowan", 120, [110, 100, 700, 200], [RULE], {
    maxSpeedKmh: 80,
    owner: "A visitor",
    note: "Its decoder does not run on analog track.",
  }),
  engine("V18", "Visiting tank engine Sallow", 120, [200, 100, 700, 250], [RULE], {
    maxSpeedKmh: 60,
    owner: "A visitor",
  }),
  engine("V19", "Visiting railcar Alder", 200, [210, 100, 700, 250], [RULE], {
    maxSpeedKmh: 60,
    owner: "A visitor",
  }),
  engine("A21", "Quay tank engine Cormorant", 140, [500, 0, 740, 500], [MEASURED], {
    maxSpeedKmh: 60,
    note: "No decoder: never onto digital track.",
  }),
  engine("A22", "Quay tank engine Guillemot", 140, [500, 0, 900, 500], [MEASURED], {
    maxSpeedKmh: 60,
    note: "No decoder: never onto digital track.",
  }),
  engine("A23", "Saddle tank Dunlin", 110, [500, 0, 1_400, 400], [RULE], {
    maxSpeedKmh: 50,
    owner: "Ivo Thackermere",
    note: "No decoder: never onto digital track.",
  }),
  engine("V20", "Visiting tank engine Bittern", 120, [410, 0, 1_400, 400], [RULE], {
    maxSpeedKmh: 50,
    owner: "A visitor",
    note: "No decoder: never onto digital track.",
  }),
];

/** Addresses are the engines' numbers. Those allowed onto analog track work the branch. */
const ADDRESSES: readonly (readonly [locomotive: string, address: number, analogAllowed: boolean])[] = [
  ["4601", 4601, false],
  ["4602", 4602, false],
  ["4603", 4603, false],
  ["D201", 201, false],
  ["D202", 202, false],
  ["D203", 203, false],
  ["2801", 2801, false],
  ["2802", 2802, false],
  ["2803", 2803, false],
  ["R52", 52, true],
  ["T31", 31, true],
  ["T32", 32, true],
  ["T33", 33, true],
  ["V11", 11, false],
  ["V12", 12, true],
  ["V13", 13, false],
  ["V14", 14, false],
  ["V15", 15, false],
  ["V17", 17, false],
  ["V18", 10_000, false],
  ["V19", 201, false],
];

const decoders: z.input<typeof decoder>[] = [
  ...ADDRESSES.map(([locomotive, address, analogAllowed]) => ({
    code: `dec-${locomotive}`,
    locomotive,
    addressKind: address < 128 ? ("short" as const) : ("long" as const),
    address,
    analogAllowed,
  })),
  {
    code: "dec-spare",
    addressKind: "short",
    address: 3,
    note: "Spare, still at the address it came with.",
  },
];

function rakeOf(
  code: string,
  name: string,
  lengthMm: number,
  vehicles: number,
  lightingMa: number,
  source: FigureSource,
  more: Partial<Rake> = {},
): Rake {
  const inrush = { ma: Math.round(lightingMa * 1.5), source: RULE };
  return { code, name, lengthMm, vehicles, lighting: { ma: lightingMa, source }, inrush, ...more };
}

/** Lit coaches: 5 to 20 mA each with LEDs, 50 to 100 mA a bulb: common practice. */
const rakes: Rake[] = [
  rakeOf("C1", "Express coaches, cream", 1_400, 5, 75, MEASURED, { note: "LEDs, 15 mA a coach." }),
  rakeOf("C2", "Express coaches, maroon", 1_400, 5, 400, MEASURED, { note: "One bulb of 80 mA a coach." }),
  rakeOf("C3", "Express coaches, blue", 1_150, 4, 60, LEAFLET, { note: "LEDs." }),
  rakeOf("C4", "Local coaches, green", 780, 3, 180, MEASURED, { note: "One bulb of 60 mA a coach." }),
  rakeOf("C5", "Local coaches, teak", 780, 3, 230, MEASURED, { note: "Bulbs." }),
  rakeOf("C6", "Vintage coaches", 760, 4, 280, MEASURED, {
    owner: "Fenella Dunnaby",
    note: "Oil-lamp bulbs of 70 mA.",
  }),
  rakeOf("BR1", "Branch coaches, lit", 420, 2, 240, MEASURED, { note: "Two bulbs of 60 mA a coach." }),
  rakeOf("BR2", "Branch coaches, oldest", 400, 2, 180, MEASURED, { note: "One bulb of 90 mA a coach." }),
  rakeOf("BG1", "Branch wagons", 480, 5, 0, MEASURED),
  rakeOf("G1", "Mineral wagons", 1_500, 13, 0, MEASURED),
  rakeOf("G2", "Mixed goods", 1_180, 10, 0, MEASURED),
  rakeOf("G3", "Tank wagons", 1_060, 8, 0, MEASURED),
  rakeOf("G4", "Parcels vans", 380, 3, 0, MEASURED),
  rakeOf("CX", "Visiting saloons", 600, 2, 30, RULE, {
    inrush: { ma: 2_700, source: RULE },
    owner: "A visitor",
    note: "Large capacitors against flicker.",
  }),
  rakeOf("CB", "Visiting coaches with bulbs", 900, 4, 390, RULE, { owner: "A visitor" }),
  rakeOf("M1", "Mail vans", 1_000, 4, 30, RULE, { note: "LEDs over the sorting tables." }),
];

export const demoRoster: z.input<typeof rosterDocument> = { locomotives, decoders, rakes };
