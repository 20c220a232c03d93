import type { Interval } from "../problem.ts";
import type { Contradiction } from "./section-uses.ts";

/** One change of a selector's position. */
export interface SelectorTurn {
  readonly section: number;
  /** Outputs; −1: off. */
  readonly from: number;
  readonly to: number;
  /** When it is best made: with others where that can be, and as soon as all of them may be. */
  readonly atMs: number;
  /** Made at any time between these, nothing that runs is fed wrongly. Both included. */
  readonly mayMs: Interval;
  /** Whom it is for: who runs next, or who stands there. */
  readonly train: number;
  readonly reason: "runs" | "stands" | "digital";
}

/** A selector in one position. Half-open; the last one of a section ends with the schedule. */
export interface Band {
  readonly section: number;
  readonly output: number;
  readonly span: Interval;
}

export interface SelectorSchedule {
  /** In the order in which to make them: by time, at one moment first those to off, then by section. */
  readonly turns: readonly SelectorTurn[];
  /** By section and time; only where a selector is not off. */
  readonly bands: readonly Band[];
}

export type ScheduleAnswer =
  | { readonly status: "made"; readonly schedule: SelectorSchedule }
  | { readonly status: "contradicted"; readonly contradictions: readonly Contradiction[] }
  | { readonly status: "not-served" };

/** A turn before its moment is chosen: `strictMs` is when every section is right at every instant. */
export interface OpenTurn extends Omit<SelectorTurn, "atMs"> {
  readonly strictMs: Interval;
}
