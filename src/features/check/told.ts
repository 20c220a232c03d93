import type { Finding, FindingCode } from "../../planner/findings.ts";
import type { Problem } from "../../planner/problem.ts";
import { amps, apart, counted, percent, volts } from "./wording.ts";

/** A finding in words: what is wrong, and what would cure it. */
export interface Wording {
  readonly sentence: string;
  readonly cure: string;
}

/** The problem, and what people call its command systems: handsets are told apart by that, not by a code. */
export interface WordedProblem extends Problem {
  readonly systemNames: readonly string[];
}

/** A finding with its indexes turned into codes and its times into layout time. */
export interface Told {
  readonly finding: Finding;
  readonly trains: readonly string[];
  readonly sections: readonly string[];
  readonly stock: readonly string[];
  readonly members: readonly string[];
  readonly handsets: readonly string[];
  readonly at: string;
  readonly from: string;
  readonly to: string;
  readonly measured: number;
  readonly limit: number;
  /** The two as people read them, in their unit, and never alike where they differ. */
  readonly measuredText: string;
  readonly limitText: string;
  /** Loads only: what is no train's, accessories, is above the limit by itself. */
  readonly isAccessories: boolean;
  /** Code of the first district, supply, output or controller in it, or name of its command system. */
  readonly thing: string;
  /** Who draws at the peak, most first: `trains 12 (1.10 A) and 47 (900 mA) draw 2.00 A`. */
  readonly draw: string;
}

/** Turns the indexes of a finding into codes. `text` shows an instant (ms) on the layout clock. */
export function tell(finding: Finding, problem: WordedProblem, text: (ms: number) => string): Told {
  const codes = (list: readonly { readonly code: string }[], indexes: readonly number[]) =>
    indexes.map((i) => list[i]?.code ?? "?");
  const things = [
    ...codes(problem.outputs, finding.outputs),
    ...codes(problem.controllers, finding.controllers),
    ...codes(problem.districts, finding.districts),
    ...codes(problem.supplies, finding.supplies),
    ...finding.commandSystems.map((i) => problem.systemNames[i] ?? "?"),
  ];
  const [measuredText, limitText] = apart(
    finding.measured ?? 0,
    finding.limit ?? 0,
    WRITERS[finding.unit] ?? String,
  );
  const othersMa = (finding.measured ?? 0) - finding.shares.reduce((sum, { ma }) => sum + ma, 0);
  return {
    finding,
    trains: codes(problem.trains, finding.trains),
    sections: codes(problem.sections, finding.sections),
    stock: [...codes(problem.locomotives, finding.locomotives), ...codes(problem.rakes, finding.rakes)],
    members: codes(problem.crew.members, finding.members),
    handsets: codes(problem.handsets, finding.handsets),
    at: text(finding.atMs),
    from: text(finding.span.startMs),
    to: text(finding.span.endMs),
    measured: finding.measured ?? 0,
    limit: finding.limit ?? 0,
    measuredText,
    limitText,
    isAccessories: othersMa > (finding.limit ?? 0),
    thing: things[0] ?? "?",
    draw: toDraw(finding, problem, othersMa, measuredText),
  };
}

const WRITERS: Readonly<Partial<Record<Finding["unit"], (value: number, more: number) => string>>> = {
  mA: amps,
  V: volts,
  share: percent,
};

/** What no train draws are the accessories. */
function toDraw({ shares }: Finding, problem: Problem, others: number, total: string): string {
  const drawers = [...shares]
    .sort((a, b) => b.ma - a.ma || a.train - b.train)
    .map(({ train, ma }) => `${problem.trains[train]?.code ?? "?"} (${amps(ma)})`);
  const accessories = others > 0 ? `accessories (${amps(others)})` : "";
  const trains = drawers.length === 0 ? "" : counted("train", drawers);
  const who = [trains, accessories].filter((part) => part !== "").join(" with ");
  return `${who} ${drawers.length === 1 && others <= 0 ? "draws" : "draw"} ${total}`;
}

/** How some of the findings are put into words. */
export type Words = Partial<Record<FindingCode, (told: Told) => Wording>>;
