import type { Link, Problem } from "../problem.ts";
import { type Group, growGroups, type Network } from "./grow-groups.ts";
import type { SectionDraws } from "./section-draws.ts";
import { feedDistricts, feedSections } from "./shared-feed.ts";

export interface CostedDistrict {
  readonly sections: readonly number[];
  readonly peakMa: number;
}

export interface CostedSupply {
  readonly districts: readonly number[];
  /** What accessories take of the peak. */
  readonly accessoryMa: number;
  readonly peakMa: number;
}

export interface Feeds {
  readonly districts: readonly CostedDistrict[];
  readonly supplies: readonly CostedSupply[];
}

/** What one breaker and one booster bear with the reserve free, and what accessories take beside the trains, mA. */
export interface Bounds {
  readonly districtMa: number;
  readonly boosterMa: number;
  readonly accessoriesMa: number;
}

/**
 * Districts of sections and boosters of districts, each as far as it bears them: see growGroups. Which neighbour is asked first
 * decides how well the rest fits, so both are grown in the order of the layout and against it, and the way with fewer
 * districts stays, of equals that with fewer boosters, then the first. Before: a district bears no more than a booster.
 */
export function layFeeds({ sections, links }: Problem, draws: SectionDraws, bounds: Bounds): Feeds {
  const isIdle = (section: number) => draws.bySection[section]?.length === 0;
  const onward = inOrder(neighbours(sections.length, links), isIdle);
  const ways = [onward, backwards(onward)].map((network) => {
    const districts = growGroups(network, feedSections(draws), bounds.districtMa).map(
      ({ nodes, peakMa }) => ({ sections: nodes, peakMa }),
    );
    return {
      districts,
      supplies: layBoosters(joints(sections.length, links, districts), draws, districts, bounds),
    };
  });
  return ways.reduce((best, way) => (isFewer(way, best) ? way : best));
}

const isFewer = (a: Feeds, b: Feeds) =>
  (a.districts.length - b.districts.length || a.supplies.length - b.supplies.length) < 0;

function layBoosters(
  joints: Network["beside"],
  draws: SectionDraws,
  districts: readonly CostedDistrict[],
  { boosterMa, accessoriesMa }: Bounds,
): CostedSupply[] {
  const onward = inOrder(joints, () => false);
  const sections = districts.map((district) => district.sections);
  const ways = [onward, backwards(onward)].map((network) =>
    addAccessories(growGroups(network, feedDistricts(draws, sections), boosterMa), accessoriesMa, boosterMa),
  );
  return ways.reduce((best, way) => (way.length < best.length ? way : best));
}

const inOrder = (beside: Network["beside"], isIdle: Network["isIdle"]): Network => ({
  beside,
  order: [...beside.keys()],
  isIdle,
});

const backwards = ({ beside, order, isIdle }: Network): Network => ({
  beside: beside.map((others) => others.toReversed()),
  order: order.toReversed(),
  isIdle,
});

/** Pours what accessories take into the room that boosters have, in order, and into more boosters where that is not enough. */
function addAccessories(boosters: readonly Group[], ma: number, boosterMa: number): CostedSupply[] {
  let leftMa = ma;
  const filled = boosters.map(({ nodes, peakMa }): CostedSupply => {
    const accessoryMa = Math.min(leftMa, Math.max(0, Math.floor(boosterMa - peakMa)));
    leftMa -= accessoryMa;
    return { districts: nodes, accessoryMa, peakMa: peakMa + accessoryMa };
  });
  for (; leftMa > 0; leftMa -= filled.at(-1)?.accessoryMa ?? leftMa) {
    const accessoryMa = Math.min(leftMa, Math.max(1, Math.floor(boosterMa)));
    filled.push({ districts: [], accessoryMa, peakMa: accessoryMa });
  }
  return filled;
}

/** Nodes beside each, ascending, each once. */
function neighbours(count: number, links: readonly Pick<Link, "from" | "to">[]): number[][] {
  const beside = Array.from({ length: count }, () => new Set<number>());
  for (const { from, to } of links) {
    beside[from]?.add(to);
    beside[to]?.add(from);
  }
  return beside.map((others, node) => [...others].filter((other) => other !== node).sort((a, b) => a - b));
}

/** Districts that meet each other. */
function joints(sections: number, links: readonly Link[], districts: readonly CostedDistrict[]): number[][] {
  const districtOf = new Int32Array(sections).fill(-1);
  for (const [at, district] of districts.entries())
    for (const section of district.sections) districtOf[section] = at;
  return neighbours(
    districts.length,
    links.map(({ from, to }) => ({ from: districtOf[from] as number, to: districtOf[to] as number })),
  );
}
