import type { Problem, Section } from "../problem.ts";
import type { ScheduleFault } from "./schedule-fault.ts";

/** A turn as a schedule says it. −1: off. */
export interface TurnToJudge {
  readonly section: number;
  readonly to: number;
  readonly atMs: number;
}

/** By section, in order of time: since when its selector stands where. Off before the first. */
export type Positions = ReadonlyMap<number, readonly { readonly atMs: number; readonly output: number }[]>;

/** Turns every selector as the schedule says, from all off, and tells turns that cannot be made. */
export function replay(
  { sections }: Problem,
  turns: readonly TurnToJudge[],
): { positions: Positions; faults: ScheduleFault[] } {
  const positions = new Map<number, { atMs: number; output: number }[]>();
  const faults: ScheduleFault[] = [];
  for (const { section, to, atMs } of [...turns].sort((a, b) => a.atMs - b.atMs)) {
    const here = positions.get(section) ?? [];
    positions.set(section, here);
    const last = here.at(-1);
    const { control, outputs } = sections[section] as Section;
    const complain = (kind: ScheduleFault["kind"]) => faults.push({ kind, section, train: -1, atMs });
    if (to >= 0 && (!outputs.includes(to) || control === "digital" || control === "dead"))
      complain("selector-does-not-reach");
    if (to === (last?.output ?? -1)) complain("turned-to-where-it-is");
    if (last?.atMs === atMs) complain("turned-twice-at-once");
    here.push({ atMs, output: to });
  }
  return { positions, faults };
}

export function positionAt(positions: Positions, section: number, atMs: number): number {
  return positions.get(section)?.findLast((each) => each.atMs <= atMs)?.output ?? -1;
}
