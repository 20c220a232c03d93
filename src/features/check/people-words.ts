import type { Words } from "./told.ts";
import { duration, listed } from "./wording.ts";

/** What is wrong with who drives what. */
export const PEOPLE_WORDS = {
  "member-in-two-places": (t) => ({
    sentence: `${t.members[0]} has trains ${listed(t.trains)} at the same time, from ${t.from} to ${t.to}.`,
    cure: "Let somebody else drive one of them.",
  }),
  "walk-too-short": (t) => ({
    sentence: `${t.members[0]} has ${duration(t.measured)} between trains ${listed(t.trains)} and needs ${duration(t.limit)} to walk from one to the other.`,
    cure: "Let somebody else drive one of them, or move the later train.",
  }),
  "driver-not-passed": (t) => ({
    sentence: `${t.members[0]} is not passed for all that train ${t.trains[0]} asks.`,
    cure: "Let somebody drive it who is, or pass them for it.",
  }),
  "junior-unsupervised": (t) => ({
    sentence: `${t.members[0]}, a junior, has train ${t.trains[0]} and no adult is booked for the slot.`,
    cure: "Ask an adult to take a train or duty in the same slot.",
  }),
} satisfies Words;
