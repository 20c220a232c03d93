import type { District, Link, Section, Supply } from "../../src/planner/problem.ts";
import { PLAIN } from "../planner/plain-records.ts";
import type { Random } from "./random.ts";

/**
 * A made-up railway: separate lines of four places each, staging yards at both ends, joined by single or double line of
 * one to three blocks; about 8 sections to a district, 4 districts to a supply, two command systems.
 */
export interface MadeRailway {
  readonly sections: readonly Section[];
  readonly links: readonly Link[];
  readonly districts: readonly District[];
  readonly supplies: readonly Supply[];
  readonly lines: readonly MadeLine[];
}

/** Roads of each place, and between each two the blocks of both directions (the same ones on single line). */
export interface MadeLine {
  readonly roads: readonly (readonly number[])[];
  readonly up: readonly (readonly number[])[];
  readonly down: readonly (readonly number[])[];
}

const SECTIONS_A_DISTRICT = 8;
const DISTRICTS_A_SUPPLY = 4;

export function makeRailway(random: Random, sectionsWanted: number): MadeRailway {
  const sections: Section[] = [];
  const links: Link[] = [];
  const lines: MadeLine[] = [];
  const place = { next: 0 };
  while (lines.length === 0 || sections.length + 10 < sectionsWanted)
    lines.push(makeLine(random, sections, links, place));
  const districts: District[] = [];
  for (let i = 0; i * SECTIONS_A_DISTRICT < sections.length; i++)
    districts.push({
      code: `D${i}`,
      supply: Math.floor(i / DISTRICTS_A_SUPPLY),
      breakerMa: 100_000,
      ...PLAIN.district,
    });
  const supplies: Supply[] = [];
  for (let i = 0; i * DISTRICTS_A_SUPPLY < districts.length; i++)
    supplies.push({
      code: `S${i}`,
      commandSystem: i % 2,
      ratingMa: 100_000,
      accessoryMa: 100,
      ...PLAIN.supply,
    });
  return { sections, links, districts, supplies, lines };
}

function makeLine(random: Random, sections: Section[], links: Link[], place: { next: number }): MadeLine {
  const roads: number[][] = [];
  const up: number[][] = [];
  const down: number[][] = [];
  for (let at = 0; at < 4; at++) {
    const isStaging = at === 0 || at === 3;
    if (at > 0) {
      const blocks = random.pick([1, 2, 2, 2, 3]);
      up.push(addSections(random, sections, blocks, -1, false));
      down.push(
        random.chance(0.4) ? addSections(random, sections, blocks, -1, false) : (up.at(-1) as number[]),
      );
    }
    roads.push(addSections(random, sections, isStaging ? 4 : random.whole(2, 4), place.next++, isStaging));
    if (at > 0) linkGap(links, roads, up[at - 1] as number[], down[at - 1] as number[], at);
  }
  return { roads, up, down };
}

function addSections(
  random: Random,
  sections: Section[],
  count: number,
  place: number,
  isStaging: boolean,
): number[] {
  return Array.from({ length: count }, () => {
    const index = sections.length;
    sections.push({
      ...PLAIN.section,
      code: `T${index}`,
      lengthMm: place < 0 ? random.whole(2_400, 4_000) : random.whole(2_000, 3_200),
      place,
      control: "digital",
      shared: false,
      district: Math.floor(index / SECTIONS_A_DISTRICT),
      outputs: [],
      maxSpeedKmh: random.chance(0.3) ? 60 : 0,
      mustClear: place >= 0,
      handStaging: isStaging,
    });
    return index;
  });
}

function linkGap(links: Link[], roads: number[][], up: number[], down: number[], at: number): void {
  for (const blocks of up === down ? [up] : [up, down]) {
    const oneWay = false;
    for (const road of roads[at - 1] as number[]) links.push({ from: road, to: blocks[0] as number, oneWay });
    for (let i = 1; i < blocks.length; i++)
      links.push({ from: blocks[i - 1] as number, to: blocks[i] as number, oneWay });
    for (const road of roads[at] as number[]) links.push({ from: blocks.at(-1) as number, to: road, oneWay });
  }
}
