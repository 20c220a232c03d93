import type { Finding, FindingCode } from "../../planner/findings.ts";
import type { Problem } from "../../planner/problem.ts";
import { amps, counted, duration, listed, number } from "./wording.ts";

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
interface Told {
  readonly finding: Finding;
  readonly trains: readonly string[];
  readonly sections: readonly string[];
  readonly stock: readonly string[];
  readonly at: string;
  readonly from: string;
  readonly to: string;
  readonly measured: number;
  readonly limit: number;
  /** Code of the first district, supply, output or controller in it, or name of its command system. */
  readonly thing: string;
  /** Who draws at the peak, most first: `trains 12 (1.10 A) and 47 (900 mA) draw 2.00 A`. */
  readonly draw: string;
}

/** Puts a finding into words for a club member. `text` shows an instant (ms) on the layout clock. */
export function word(finding: Finding, problem: WordedProblem, text: (ms: number) => string): Wording {
  return WORDINGS[finding.code](tell(finding, problem, text));
}

function tell(finding: Finding, problem: WordedProblem, text: (ms: number) => string): Told {
  const codes = (list: readonly { readonly code: string }[], indexes: readonly number[]) =>
    indexes.map((i) => list[i]?.code ?? "?");
  const things = [
    ...codes(problem.outputs, finding.outputs),
    ...codes(problem.controllers, finding.controllers),
    ...codes(problem.districts, finding.districts),
    ...codes(problem.supplies, finding.supplies),
    ...finding.commandSystems.map((i) => problem.systemNames[i] ?? "?"),
  ];
  return {
    finding,
    trains: codes(problem.trains, finding.trains),
    sections: codes(problem.sections, finding.sections),
    stock: [...codes(problem.locomotives, finding.locomotives), ...codes(problem.rakes, finding.rakes)],
    at: text(finding.atMs),
    from: text(finding.span.startMs),
    to: text(finding.span.endMs),
    measured: finding.measured ?? 0,
    limit: finding.limit ?? 0,
    thing: things[0] ?? "?",
    draw: toDraw(finding, problem),
  };
}

/** What no train draws are the accessories. */
function toDraw({ shares, measured }: Finding, problem: Problem): string {
  const total = measured ?? 0;
  const others = total - shares.reduce((sum, { ma }) => sum + ma, 0);
  const drawers = [...shares]
    .sort((a, b) => b.ma - a.ma || a.train - b.train)
    .map(({ train, ma }) => `${problem.trains[train]?.code ?? "?"} (${amps(ma)})`);
  const accessories = others > 0 ? `accessories (${amps(others)})` : "";
  const trains = drawers.length === 0 ? "" : counted("train", drawers);
  const who = [trains, accessories].filter((part) => part !== "").join(" with ");
  return `${who} ${drawers.length === 1 && others <= 0 ? "draws" : "draw"} ${amps(total)}`;
}

const overFor = (t: Told) => (t.finding.overMs === null ? "" : ` (for ${duration(t.finding.overMs)} in all)`);

const reserveGone = (t: Told) => `above ${amps(t.limit)} its reserve is eaten into${overFor(t)}`;

const FEWER_AT_ONCE =
  "Move one of these trains, give it a locomotive that draws less, or leave lit coaches out.";

const WORDINGS = {
  "section-clash": (t) => ({
    sentence: `Trains ${listed(t.trains)} both need ${counted("section", t.sections)} from ${t.from} to ${t.to}.`,
    cure: "Move one of them until the other is clear, or send it over another road.",
  }),
  "shared-section-too-full": (t) => ({
    sentence: `${counted("Train", t.trains)} are together in section ${t.sections[0]} from ${t.from} to ${t.to}: ${t.measured} mm of train on ${t.limit} mm of track.`,
    cure: "Let one of them wait elsewhere, or shorten it.",
  }),
  "path-not-linked": (t) => ({
    sentence: `Train ${t.trains[0]} cannot pass from section ${t.sections[0]} to ${t.sections[1]}: they do not join.`,
    cure: "Put the missing section into its path, or add the link to the layout.",
  }),
  "path-times-backwards": (t) => ({
    sentence: `Train ${t.trains[0]} is timed backwards at section ${t.sections.at(-1)}, ${t.at}: it would be there before it left the call before. It is left out of the rest of this check.`,
    cure: "Correct its times.",
  }),
  "path-too-fast": (t) => ({
    sentence: `Train ${t.trains[0]} would run at ${t.measured.toFixed(1)} km/h over ${counted("section", t.sections)} from ${t.from} to ${t.to}, where ${Number(t.limit.toFixed(1))} km/h is allowed.`,
    cure: "Give it more time between these calls, or a faster locomotive where that is the limit.",
  }),
  "path-section-not-fed": (t) => ({
    sentence: `Train ${t.trains[0]} runs over ${counted("section", t.sections)}, which nothing feeds as this session is set up.`,
    cure: "Run the area the way the section is wired, give it a district, or send the train another way.",
  }),
  "path-no-changeover": (t) => ({
    sentence: `Train ${t.trains[0]} passes between digital and analog track at ${counted("section", t.sections)} without standing in a changeover section that holds all of it.`,
    cure: "Let it stop in a changeover section at least as long as the train.",
  }),
  "train-longer-than-road": (t) => ({
    sentence: `Train ${t.trains[0]} is ${t.measured} mm long and calls in section ${t.sections[0]}, which holds ${t.limit} mm: it would foul the points.`,
    cure: "Use a longer road, or a shorter train.",
  }),
  "stock-elsewhere": (t) => ({
    sentence: `${listed(t.stock)} should leave with train ${t.trains.at(-1)} from section ${t.sections.at(-1)} at ${t.at}, but train ${t.trains[0]} left it in ${t.sections[0]}.`,
    cure: "Add the working or the shunt that brings it there, or use other stock.",
  }),
  "stock-in-two-trains": (t) => ({
    sentence: `${listed(t.stock)} is in trains ${listed(t.trains)} at once from ${t.from} to ${t.to}.`,
    cure: "Give one of the trains other stock, or let it leave after the other has arrived.",
  }),
  "output-none-reaches": (t) => ({
    sentence: `No controller output reaches all that train ${t.trains[0]} needs from ${t.from} to ${t.to}: ${counted("section", t.sections)}.`,
    cure: "Wire one output to the selectors of all these sections, or let the train stop on the way long enough to change outputs.",
  }),
  "outputs-too-few": (t) => ({
    sentence: `${counted("Train", t.trains)} cannot all have a controller output between ${t.from} and ${t.to}: no way of sharing them out serves every one.`,
    cure:
      t.finding.needed === null
        ? "Move one of these trains, or add an output."
        : `Move one of these trains, or add ${number(t.finding.needed, "output")} reaching ${counted("section", t.sections)}.`,
  }),
  "outputs-not-decided": (t) => ({
    sentence: `Whether the controller outputs suffice between ${t.from} and ${t.to} could not be settled: the search grew too large.`,
    cure: "Check a shorter slot, or give the selectors fewer outputs to choose from.",
  }),
  "output-over-rating": (t) => ({
    sentence: `Output ${t.thing} is too weak at ${t.at}: ${t.draw}, and it can give ${amps(t.limit)}${overFor(t)}.`,
    cure: "Give the train less motive power or fewer lit coaches, or let a stronger output reach its sections.",
  }),
  "output-too-close": (t) => ({
    sentence: `Output ${t.thing} is close to its rating at ${t.at}: ${t.draw}; ${reserveGone(t)}.`,
    cure: "Give the train less motive power or fewer lit coaches.",
  }),
  "controller-over-rating": (t) => ({
    sentence: `The transformer of controller ${t.thing} is overloaded at ${t.at}: ${t.draw}, and it can give ${amps(t.limit)}${overFor(t)}.`,
    cure: FEWER_AT_ONCE,
  }),
  "controller-too-close": (t) => ({
    sentence: `The transformer of controller ${t.thing} is close to its rating at ${t.at}: ${t.draw}; ${reserveGone(t)}.`,
    cure: FEWER_AT_ONCE,
  }),
  "district-will-trip": (t) => ({
    sentence: `District ${t.thing} will trip at ${t.at}: ${t.draw}, and its breaker opens at ${amps(t.limit)}${overFor(t)}.`,
    cure: FEWER_AT_ONCE,
  }),
  "district-too-close": (t) => ({
    sentence: `District ${t.thing} is close to tripping at ${t.at}: ${t.draw}; ${reserveGone(t)}.`,
    cure: FEWER_AT_ONCE,
  }),
  "supply-over-rating": (t) => ({
    sentence: `Supply ${t.thing} is overloaded at ${t.at}: ${t.draw}, and it can give ${amps(t.limit)}${overFor(t)}.`,
    cure: FEWER_AT_ONCE,
  }),
  "supply-too-close": (t) => ({
    sentence: `Supply ${t.thing} is close to its rating at ${t.at}: ${t.draw}; ${reserveGone(t)}.`,
    cure: FEWER_AT_ONCE,
  }),
  "handsets-too-few": (t) => ({
    sentence: `At ${t.at} ${number(t.measured, "handset")} of ${t.thing} ${t.measured === 1 ? "is" : "are"} needed and there ${t.limit === 1 ? "is" : "are"} ${t.limit}: ${counted("train", t.trains, "trains")}.`,
    cure: "Move one of these trains, or borrow a handset.",
  }),
  "train-outside-slot": (t) => ({
    sentence: `Train ${t.trains[0]} is still running when the slot ends: it arrives ${duration(t.measured)} of real time later, at ${t.to}.`,
    cure: "Let it run earlier, or make the slot longer.",
  }),
} satisfies Record<FindingCode, (told: Told) => Wording>;
