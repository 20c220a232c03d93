import { digitalStays, type StayScene } from "../analog/stays.ts";
import { STANDS } from "../motion/motions.ts";
import type { Interval, Problem, Section } from "../problem.ts";
import type { AnalogRun } from "../result.ts";
import { sharesStock } from "../stock/stock-plan.ts";

/** A span during which the selector of a section must stand in one position. Never empty. */
export interface SectionUse {
  readonly section: number;
  readonly span: Interval;
  /** Who is in it, or first. */
  readonly train: number;
  /** The run whose output feeds it; −1: switched off. */
  readonly run: number;
  /** Off because it is under digital control then. */
  readonly isDigital: boolean;
}

/** Two trains want different things of one section at one time: a fault of the plan. */
export interface Contradiction {
  readonly section: number;
  readonly trains: readonly [number, number];
  readonly span: Interval;
}

/** By section, in order of time and disjoint. With contradictions the uses mean nothing. */
export interface SectionUses {
  readonly uses: ReadonlyMap<number, readonly SectionUse[]>;
  readonly contradictions: readonly Contradiction[];
}

type Run = Pick<AnalogRun, "train" | "sections" | "sectionSpans">;

/**
 * What every section with a selector must be switched to and when (design section 6): to the output of a run while
 * the run feeds it; off while stock stands in it outside of any run, and while it is digital. In between nothing
 * is in it, and its selector may stand anywhere. Empty where nothing runs on analog track. Cost: sorting the uses of each section.
 */
export function sectionUses(scene: StayScene, runs: readonly Run[]): SectionUses {
  const uses = new Map<number, SectionUse[]>();
  const contradictions: Contradiction[] = [];
  if (runs.length === 0) return { uses, contradictions };
  const fed = fedUses(runs);
  const held = heldUses(scene);
  for (const section of [...new Set([...fed.keys(), ...held.keys()])].sort((a, b) => a - b)) {
    const runsHere = (fed.get(section) ?? []).sort(byTime);
    const clash = runsHere.find((use, at) => at > 0 && meets(runsHere[at - 1] as SectionUse, use));
    if (clash) {
      contradictions.push(between(runsHere[runsHere.indexOf(clash) - 1] as SectionUse, clash));
      continue;
    }
    const off = (held.get(section) ?? []).flatMap((use) => outsideRuns(scene, use, runsHere));
    const all = [...runsHere, ...merged(off)].sort(byTime);
    const fault = all.findIndex((use, at) => at > 0 && meets(all[at - 1] as SectionUse, use));
    if (fault > 0) contradictions.push(between(all[fault - 1] as SectionUse, all[fault] as SectionUse));
    else uses.set(section, all);
  }
  return { uses, contradictions };
}

function fedUses(runs: readonly Run[]): Map<number, SectionUse[]> {
  const uses = new Map<number, SectionUse[]>();
  for (const [run, { train, sections, sectionSpans }] of runs.entries())
    for (const [at, section] of sections.entries()) {
      const span = sectionSpans[at] as Interval;
      put(uses, { section, span, train, run, isDigital: false });
    }
  return uses;
}

/** Where and when trains are, and sections that can be either are digital: all off but for the runs. */
function heldUses(scene: StayScene): Map<number, SectionUse[]> {
  const { problem, motions, stock } = scene;
  const uses = new Map<number, SectionUse[]>();
  const mayBeEither = problem.sections.some(({ control }) => control === "changeover");
  for (const { section, span, train } of mayBeEither ? digitalStays(scene) : [])
    put(uses, { section, span, train, run: -1, isDigital: true });
  for (let row = 0; row < motions.section.length; row++) {
    const train = motions.trainOfRow[row] as number;
    const section = motions.section[row] as number;
    if (motions.timed[train] === 0 || !hasSelector(problem, section)) continue;
    const enterMs = motions.enterMs[row] as number;
    const clearMs = motions.clearMs[row] as number;
    const startMs = enterMs === STANDS ? (stock.standFromMs[train] as number) : enterMs;
    const endMs = clearMs === STANDS ? (stock.standToMs[train] as number) : clearMs;
    put(uses, { section, span: { startMs, endMs }, train, run: -1, isDigital: false });
  }
  return uses;
}

function hasSelector({ sections }: Problem, section: number): boolean {
  const { control } = sections[section] as Section;
  return control === "analog" || control === "changeover";
}

function put(uses: Map<number, SectionUse[]>, use: SectionUse): void {
  if (use.span.startMs >= use.span.endMs) return;
  const here = uses.get(use.section);
  if (here) here.push(use);
  else uses.set(use.section, [use]);
}

/** The parts of a stand outside of the runs of the same stock; runs in order and disjoint. */
function outsideRuns({ stock }: StayScene, use: SectionUse, runs: readonly SectionUse[]): SectionUse[] {
  const parts: SectionUse[] = [];
  let { startMs } = use.span;
  const { endMs } = use.span;
  for (let at = firstEndingAfter(runs, startMs); at < runs.length; at++) {
    const { span, train } = runs[at] as SectionUse;
    if (span.startMs >= endMs) break;
    if (!sharesStock(stock, use.train, train)) continue;
    if (span.startMs > startMs) parts.push({ ...use, span: { startMs, endMs: span.startMs } });
    startMs = Math.max(startMs, span.endMs);
  }
  if (startMs < endMs) parts.push({ ...use, span: { startMs, endMs } });
  return parts;
}

function firstEndingAfter(runs: readonly SectionUse[], ms: number): number {
  let low = 0;
  let high = runs.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((runs[middle] as SectionUse).span.endMs <= ms) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Stands that overlap or touch are one, of the train that is first. */
function merged(stands: SectionUse[]): SectionUse[] {
  const all: SectionUse[] = [];
  for (const use of stands.sort(byTime)) {
    const last = all.at(-1);
    if (!last || last.span.endMs < use.span.startMs) all.push(use);
    else {
      const endMs = Math.max(last.span.endMs, use.span.endMs);
      const span = { startMs: last.span.startMs, endMs };
      all[all.length - 1] = { ...last, span, isDigital: last.isDigital || use.isDigital };
    }
  }
  return all;
}

function byTime(a: SectionUse, b: SectionUse): number {
  return a.span.startMs - b.span.startMs || a.span.endMs - b.span.endMs || a.train - b.train || a.run - b.run;
}

function meets(a: SectionUse, b: SectionUse): boolean {
  return a.run !== b.run && a.span.endMs > b.span.startMs;
}

function between(a: SectionUse, b: SectionUse): Contradiction {
  const span = { startMs: b.span.startMs, endMs: Math.min(a.span.endMs, b.span.endMs) };
  return { section: a.section, trains: [a.train, b.train], span };
}
