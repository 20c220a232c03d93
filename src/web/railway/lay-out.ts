import type { Graph } from "@dagrejs/dagre";
import type { Link, Section } from "../../../shared/layout.ts";
import type { Railway } from "./railway-state.ts";

/** Where a section is drawn: the line from its left to its right end, px. */
export interface DrawnSection {
  readonly code: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

export interface DrawnLink {
  readonly code: string;
  readonly points: readonly (readonly [x: number, y: number])[];
  readonly oneWay: boolean;
}

/** A place around its sections. */
export interface DrawnPlace {
  readonly code: string;
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly sections: readonly DrawnSection[];
  readonly links: readonly DrawnLink[];
  readonly places: readonly DrawnPlace[];
}

const HEIGHT = 30;

type Dagre = typeof import("@dagrejs/dagre");

/**
 * Lays a railway out from left to right by layers (Sugiyama's method, by the library). Records in another order give the
 * same drawing. Longer sections are drawn longer, though not in proportion.
 */
export function layOut(
  { layout, Graph: NewGraph }: Pick<Dagre, "layout" | "Graph">,
  railway: Railway,
): Drawing {
  const graph: Graph = new NewGraph({ compound: true, multigraph: true });
  graph.setGraph({ rankdir: "LR", nodesep: 14, ranksep: 34, marginx: 12, marginy: 20, ranker: "tight-tree" });
  graph.setDefaultEdgeLabel(() => ({}));
  const byCode = <T extends { readonly code: string }>(list: readonly T[]) =>
    [...list].sort((a, b) => (a.code < b.code ? -1 : 1));
  const sections = byCode(railway.sections);
  const here = new Set(sections.map(({ code }) => code));
  const places = byCode(railway.places).filter(({ code }) => sections.some(({ place }) => place === code));
  for (const { code } of places) graph.setNode(`place ${code}`, {});
  for (const { code, lengthMm, place } of sections) {
    graph.setNode(code, { width: widthOf(code, lengthMm), height: HEIGHT });
    if (place !== null && places.some((one) => one.code === place)) graph.setParent(code, `place ${place}`);
  }
  const links = byCode(railway.links).filter(({ from, to }) => here.has(from) && here.has(to));
  const far = distances(railway, sections, links);
  // drawn away from where the line begins, whichever way it was written down
  const ends = new Map(
    links.map(({ code, from, to }) => {
      const by = (far.get(from) ?? 0) - (far.get(to) ?? 0) || (from < to ? -1 : 1);
      return [code, by <= 0 ? ([from, to] as const) : ([to, from] as const)];
    }),
  );
  for (const [code, [left, right]] of ends) if (left !== right) graph.setEdge(left, right, {}, code);
  layout(graph);
  const { width = 0, height = 0 } = graph.graph() as { width?: number; height?: number };
  return {
    width,
    height,
    sections: sections.map(({ code }) => {
      const node = graph.node(code) as Box;
      return { code, x: node.x - node.width / 2, y: node.y, width: node.width };
    }),
    links: links.flatMap(({ code, from, oneWay }) => {
      const [left = "", right = ""] = ends.get(code) ?? [];
      const edge = graph.edge({ v: left, w: right, name: code }) as
        | { points?: { x: number; y: number }[] }
        | undefined;
      const bends = edge?.points?.slice(1, -1).map(({ x, y }) => [x, y] as const) ?? [];
      if (edge === undefined) return [];
      // the library ends links at boxes; they join tracks
      const [start, end] = joined(graph.node(left) as Box, graph.node(right) as Box);
      const points = [start, ...bends, end];
      return [{ code, oneWay, points: left === from ? points : points.toReversed() }];
    }),
    places: places.map(({ code, name }) => {
      const box = graph.node(`place ${code}`) as Box;
      return {
        code,
        name,
        x: box.x - box.width / 2,
        y: box.y - box.height / 2,
        width: box.width,
        height: box.height,
      };
    }),
  };
}

/** The ends of two tracks that face each other. */
function joined(a: Box, b: Box): [readonly [number, number], readonly [number, number]] {
  const side = a.x <= b.x ? 1 : -1;
  return [
    [a.x + (side * a.width) / 2, a.y],
    [b.x - (side * b.width) / 2, b.y],
  ];
}

/**
 * How many links each section is from where the line with most places begins. What cannot be reached from there, and
 * everything where there is no line, is reckoned from an end of its own: the place of a section as far as any from its
 * first one. Cost: linear.
 */
function distances(
  { lines }: Railway,
  sections: readonly Section[],
  links: readonly Link[],
): ReadonlyMap<string, number> {
  const beside = new Map(sections.map(({ code }) => [code, [] as string[]]));
  for (const { from, to } of links) {
    beside.get(from)?.push(to);
    beside.get(to)?.push(from);
  }
  const [line] = [...lines].sort((a, b) => b.stops.length - a.stops.length || (a.code < b.code ? -1 : 1));
  const first = line?.stops.reduce((least, stop) => (stop.atMm < least.atMm ? stop : least)).place;
  const placeOf = new Map(sections.map(({ code, place }) => [code, place]));
  const far = new Map<string, number>();
  const reach = (starts: readonly string[]) => {
    for (const start of starts) far.set(start, 0);
    const queue = [...starts];
    for (let at = queue.shift(); at !== undefined; at = queue.shift())
      for (const next of beside.get(at) ?? [])
        if (!far.has(next)) {
          far.set(next, (far.get(at) ?? 0) + 1);
          queue.push(next);
        }
  };
  reach(sections.filter(({ place }) => first !== undefined && place === first).map(({ code }) => code));
  for (const { code } of sections) {
    if (far.has(code)) continue;
    const known = new Set(far.keys());
    reach([code]);
    const apart = [...far].filter(([one]) => !known.has(one));
    const [end] = apart.reduce((farthest, one) => (one[1] > farthest[1] ? one : farthest));
    for (const [one] of apart) far.delete(one);
    const at = placeOf.get(end) ?? null;
    const roads = apart.filter(([one]) => at !== null && placeOf.get(one) === at).map(([one]) => one);
    reach(roads.length > 0 ? roads : [end]);
  }
  return far;
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** At least as wide as its code is written. */
const widthOf = (code: string, lengthMm: number) =>
  Math.round(Math.max(18 + 9 * code.length, 22 + 1.1 * Math.sqrt(lengthMm)));
