import type { TryStep } from "../../../shared/what-if.ts";

const WORDS = {
  move: "later",
  "change-locomotive": "with",
  "leave-rake": "less",
  "leave-train": "out",
} as const;
/** Between the parts of a step and between steps: no code has them. */
const [PART, STEP] = ["~", "!"];

/** What is tried, short enough for an address: `1A03~later~5!3G04~with~51~77`. */
export function toTryText(steps: readonly TryStep[]): string {
  return steps.map((step) => [step.train, WORDS[step.do], ...rest(step)].join(PART)).join(STEP);
}

function rest(step: TryStep): (string | number)[] {
  switch (step.do) {
    case "move":
      return [step.minutes];
    case "change-locomotive":
      return [step.from, step.to];
    case "leave-rake":
      return [step.rake];
    case "leave-train":
      return [];
  }
}

/** The other way; what cannot be read is left out, so that an old link still opens the page. */
export function readTryText(text: string): TryStep[] {
  return text.split(STEP).flatMap((part) => readStep(part.split(PART)) ?? []);
}

function readStep([train = "", word, first = "", second = ""]: readonly string[]): TryStep | null {
  if (train === "") return null;
  switch (word) {
    case WORDS.move: {
      const minutes = Number(first);
      return first !== "" && Math.abs(minutes) <= 1_440 ? { do: "move", train, minutes } : null;
    }
    case WORDS["change-locomotive"]:
      return first && second ? { do: "change-locomotive", train, from: first, to: second } : null;
    case WORDS["leave-rake"]:
      return first ? { do: "leave-rake", train, rake: first } : null;
    case WORDS["leave-train"]:
      return { do: "leave-train", train };
    default:
      return null;
  }
}

/** What an address tries. */
export const readTries = (search: string): TryStep[] =>
  readTryText(new URLSearchParams(search).get("try") ?? "");

/** The part of an address that says it; empty where nothing is tried. */
export const triesInAddress = (steps: readonly TryStep[]): string =>
  steps.length === 0 ? "" : `try=${encodeURIComponent(toTryText(steps))}`;

/** A step in words: `1A03 runs 5 layout minutes later`. */
export function stepWords(step: TryStep): string {
  switch (step.do) {
    case "move": {
      const minutes = Math.abs(step.minutes);
      const much = `${minutes} layout ${minutes === 1 ? "minute" : "minutes"}`;
      return `${step.train} runs ${much} ${step.minutes < 0 ? "earlier" : "later"}`;
    }
    case "change-locomotive":
      return `${step.train} has ${step.to} instead of ${step.from}`;
    case "leave-rake":
      return `${step.train} runs without ${step.rake}`;
    case "leave-train":
      return `${step.train} does not run`;
  }
}
