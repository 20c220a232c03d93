import type { Words } from "./told.ts";
import { counted, duration, listed } from "./wording.ts";

/** What is wrong with paths, occupation and stock. */
export const TRACK_WORDS = {
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
  "train-outside-slot": (t) => ({
    sentence: `Train ${t.trains[0]} is still running when the slot ends: it arrives ${duration(t.measured)} of real time later, at ${t.to}.`,
    cure: "Let it run earlier, or make the slot longer.",
  }),
  "train-bridges-feeds": (t) => ({
    sentence: `Train ${t.trains[0]} is ${t.measured} mm long and reaches over ${counted("section", t.sections)}, ${t.limit} mm: it would join digital and analog track while it stands there.`,
    cure: "Shorten the train, or change over in a section that holds all of it.",
  }),
  "return-loop-too-short": (t) => ({
    sentence: `Train ${t.trains[0]} is ${t.measured} mm long and the return loop of ${counted("section", t.sections)} holds ${t.limit} mm: both its ends would be crossed at once, which is a short circuit.`,
    cure: "Shorten the train, or send it round a loop that holds all of it.",
  }),
  "section-too-busy": (t) => ({
    sentence: `Section ${t.sections[0]} is taken for ${t.measuredText} of the time, were its trains pushed together until they touch: more than ${t.limitText} leaves too little to catch up in.`,
    cure: "Leave a train out, use another road, or make the slot longer.",
  }),
} satisfies Words;
