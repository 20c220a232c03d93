import type { z } from "zod";
import type { commandSystem, controller, district, selector, supply } from "../../shared/layout.ts";
import type { shortTest } from "../../shared/short-tests.ts";

export const commandSystems: z.input<typeof commandSystem>[] = [
  { code: "club", name: "Club digital system", mostHandsets: 16, mostAddresses: 40, longAddressMost: 9_999 },
];

/** Two boosters: never joined, each with two districts behind their own breakers. */
export const supplies: z.input<typeof supply>[] = [
  { code: "B-West", name: "Booster West", commandSystem: "club", ratingMa: 4_000, accessoryMa: 150 },
  { code: "B-East", name: "Booster East", commandSystem: "club", ratingMa: 4_470, accessoryMa: 100 },
];

export const districts: z.input<typeof district>[] = [
  {
    code: "D-West",
    name: "District West",
    supply: "B-West",
    breakerMa: 2_640,
    tripDelayMs: 250,
    wiring: { conductor: "2.5 mm2 flexible", lengthMm: 9000, temperatureC: 25 },
  },
  {
    code: "D-Hesperwick",
    name: "District Hesperwick",
    supply: "B-West",
    breakerMa: 3_050,
    tripDelayMs: 250,
    wiring: { conductor: "2.5 mm2 flexible", lengthMm: 7000, temperatureC: 25 },
  },
  {
    code: "D-Junction",
    name: "District Junction",
    supply: "B-East",
    breakerMa: 3_000,
    tripDelayMs: 100,
    wiring: { conductor: "1.5 mm2 flexible", lengthMm: 8000, temperatureC: 25 },
  },
  {
    code: "D-East",
    name: "District East",
    supply: "B-East",
    breakerMa: 2_400,
    tripDelayMs: 250,
    wiring: { conductor: "1.5 mm2 flexible", lengthMm: 9500, temperatureC: 25 },
  },
];

export const controllers: z.input<typeof controller>[] = [
  {
    code: "Junction",
    name: "Controller at the junction panel",
    place: "VENN",
    transformerMa: 1_400,
    accessoryMa: 100,
    outputs: [
      { code: "A", name: "Output A", ratingMa: 950 },
      { code: "B", name: "Output B", ratingMa: 1_100 },
    ],
    note: "Both outputs at full load are more than its transformer gives.",
  },
  {
    code: "Quay",
    name: "Controller at the quay panel",
    place: "TOLV",
    transformerMa: 1_150,
    accessoryMa: 200,
    outputs: [{ code: "C", name: "Output C", ratingMa: 1_000 }],
    note: "Its accessory output lights the quay.",
  },
];

/**
 * Which outputs each branch section can be turned to. The bay at the junction has A alone, so two trains can't be on
 * the way to or from it at once; the quay's own roads have C alone; one output reaches from end to end nowhere.
 */
const REACH: Readonly<Record<string, string>> = {
  V3: "AB",
  V5: "A",
  B1: "AB",
  LM1: "AB",
  LM2: "AB",
  B2: "AB",
  B3: "AB",
  M1: "ABC",
  M2: "BC",
  MG: "AC",
  B4: "BC",
  B5: "BC",
  T1: "BC",
  T2: "C",
  T3: "C",
  TQ: "C",
};

export const selectors: z.input<typeof selector>[] = Object.entries(REACH).map(([section, outputs]) => ({
  code: `S-${section}`,
  section,
  outputs: [...outputs],
}));

/** Each breaker was seen to open in the winter before the two nights. */
export const shortTests: z.input<typeof shortTest>[] = districts.map(({ code }) => ({
  code: `winter-${code}`,
  district: code,
  testedOn: "2027-01-16",
  result: "passed",
  by: "Fenella Dunnaby",
}));
