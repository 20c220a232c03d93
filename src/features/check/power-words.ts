import type { Told, Words } from "./told.ts";
import { counted, duration, number } from "./wording.ts";

const overFor = (t: Told) => (t.finding.overMs === null ? "" : ` (for ${duration(t.finding.overMs)} in all)`);

const reserveGone = (t: Told) => `above ${t.limitText} its reserve is eaten into${overFor(t)}`;

const fewerAtOnce = ({ isAccessories }: Told) =>
  isAccessories
    ? "Feed some of the accessories from elsewhere: they take too much by themselves, whatever runs."
    : "Move one of these trains, give it a locomotive that draws less, or leave lit coaches out.";

const THICKER =
  "Lay a thicker conductor, or a shorter run: the wiring report says which would do, if one does.";

/** What is wrong with currents, outputs and wires. */
export const POWER_WORDS = {
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
    sentence: `Output ${t.thing} is too weak at ${t.at}: ${t.draw}, and it can give ${t.limitText}${overFor(t)}.`,
    cure: "Give the train less motive power or fewer lit coaches, or let a stronger output reach its sections.",
  }),
  "output-too-close": (t) => ({
    sentence: `Output ${t.thing} is close to its rating at ${t.at}: ${t.draw}; ${reserveGone(t)}.`,
    cure: "Give the train less motive power or fewer lit coaches.",
  }),
  "controller-over-rating": (t) => ({
    sentence: `The transformer of controller ${t.thing} is overloaded at ${t.at}: ${t.draw}, and it can give ${t.limitText}${overFor(t)}.`,
    cure: fewerAtOnce(t),
  }),
  "controller-too-close": (t) => ({
    sentence: `The transformer of controller ${t.thing} is close to its rating at ${t.at}: ${t.draw}; ${reserveGone(t)}.`,
    cure: fewerAtOnce(t),
  }),
  "district-will-trip": (t) => ({
    sentence: `District ${t.thing} will trip at ${t.at}: ${t.draw}, and its breaker opens at ${t.limitText}${overFor(t)}.`,
    cure: fewerAtOnce(t),
  }),
  "district-too-close": (t) => ({
    sentence: `District ${t.thing} is close to tripping at ${t.at}: ${t.draw}; ${reserveGone(t)}.`,
    cure: fewerAtOnce(t),
  }),
  "supply-over-rating": (t) => ({
    sentence: `Supply ${t.thing} is overloaded at ${t.at}: ${t.draw}, and it can give ${t.limitText}${overFor(t)}.`,
    cure: fewerAtOnce(t),
  }),
  "supply-too-close": (t) => ({
    sentence: `Supply ${t.thing} is close to its rating at ${t.at}: ${t.draw}; ${reserveGone(t)}.`,
    cure: fewerAtOnce(t),
  }),
  "output-trips-on-stall": (t) => ({
    sentence: `Output ${t.thing} would be overloaded if locomotive ${t.stock[0]} of train ${t.trains[0]} stalled at ${t.at}: it would then have to give ${t.measuredText}, and it can give ${t.limitText}.`,
    cure: "Give the train a locomotive that draws less when it is held, or let a stronger output reach its sections.",
  }),
  "district-trips-on-stall": (t) => ({
    sentence: `District ${t.thing} would trip if locomotive ${t.stock[0]} stalled at ${t.at}: it would then draw ${t.measuredText}, and its breaker opens at ${t.limitText}.`,
    cure: "Run fewer trains there then, or give the train a locomotive that draws less when it is held.",
  }),
  "district-trips-on-restart": (t) => ({
    sentence: `After a trip at ${t.at} the breaker of district ${t.thing} would not hold in: everything in it comes up at once and draws ${t.measuredText} for a moment, and it opens at ${t.limitText}.`,
    cure:
      t.finding.needed === null
        ? "Take a train off before power returns: in no order does the breaker bear all of them. Or fit one that bears a surge for longer: never one that trips at more."
        : "Bring it up in groups, as its report says, or fit a breaker that bears a surge for longer: never one that trips at more.",
  }),
  "district-drop-too-big": (t) => ({
    sentence: `The wires of district ${t.thing} lose ${t.measuredText} at its peak at ${t.at}: ${t.limitText} is as much as they should.`,
    cure: THICKER,
  }),
  "district-volts-too-low": (t) => ({
    sentence:
      t.measured > 0
        ? `At the far end of district ${t.thing} ${t.measuredText} are left at ${t.at}: ${t.limitText} is the least that decoders are made for.`
        : `At the far end of district ${t.thing} nothing is left of the volts at ${t.at}, its wires lose all: ${t.limitText} is the least that decoders are made for.`,
    cure: THICKER,
  }),
  "district-fault-not-seen": (t) => ({
    sentence: `A short at the far end of district ${t.thing} would bring ${t.measuredText}: too little for its breaker to be sure to see it, which asks for ${t.limitText}.`,
    cure: "Lay a thicker conductor or a shorter run before anything runs there, and test it: the wiring report says which would do, if one does.",
  }),
  "district-test-failed": (t) => ({
    sentence: `District ${t.thing} failed its last short test: its breaker did not open.`,
    cure: "Find out why before anything runs there, mend it, and record a test that it passes.",
  }),
  "district-not-tested": (t) => ({
    sentence: `No short test of district ${t.thing} is on record.`,
    cure: "Lay metal across the rails at its far end, see its breaker open, and record it with its date.",
  }),
} satisfies Words;
