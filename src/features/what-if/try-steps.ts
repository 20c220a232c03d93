import { LAST_LAYOUT_SECOND, parseLayoutTime, toLayoutTimeText } from "../../../shared/layout-time.ts";
import type { Train } from "../../../shared/timetable.ts";
import type { TryStep } from "../../../shared/what-if.ts";
import { hasNoSuch, noSuchTrain, noTrainThen, tooFar } from "./errors.ts";

/** What makes a train no train at all, whatever the railway. */
export type FindTrainFlaws = (train: Train) => readonly { readonly detail: string }[];

/**
 * The trains with all steps done, in the order in which they came. Cost: steps × trains.
 * @throws Refusal unprocessable, naming the step that cannot be done or would leave something that is no train
 */
export function doSteps(
  trains: readonly Train[],
  steps: readonly TryStep[],
  findFlaws: FindTrainFlaws,
): Train[] {
  let now = [...trains];
  for (const [at, step] of steps.entries()) {
    const position = now.findIndex(({ code }) => code === step.train);
    const train = now[position];
    if (train === undefined) throw noSuchTrain(at, step.train);
    if (step.do === "leave-train") {
      now = now.toSpliced(position, 1);
      continue;
    }
    const then = changed(train, step, at);
    const [flaw] = findFlaws(then);
    if (flaw !== undefined) throw noTrainThen(at, DECIDES[step.do], train.code, flaw.detail);
    now = now.with(position, then);
  }
  return now;
}

/** The field of a step that says what becomes of its train. */
const DECIDES = {
  move: "minutes",
  "change-locomotive": "to",
  "leave-rake": "rake",
} satisfies Record<Exclude<TryStep["do"], "leave-train">, string>;

/** Codes of the trains that the steps touch, each once. */
export const touched = (steps: readonly TryStep[]): string[] => [...new Set(steps.map(({ train }) => train))];

function changed(train: Train, step: Exclude<TryStep, { do: "leave-train" }>, at: number): Train {
  switch (step.do) {
    case "move":
      return moved(train, Math.round(step.minutes * 60), at);
    case "change-locomotive": {
      if (!train.motivePower.some(({ locomotive }) => locomotive === step.from))
        throw hasNoSuch(at, "from", train.code, "locomotive", step.from);
      const motivePower = train.motivePower.map((power) =>
        power.locomotive === step.from ? { ...power, locomotive: step.to } : power,
      );
      return { ...train, motivePower };
    }
    case "leave-rake":
      if (!train.rakes.includes(step.rake)) throw hasNoSuch(at, "rake", train.code, "rake", step.rake);
      return { ...train, rakes: train.rakes.filter((rake) => rake !== step.rake) };
  }
}

/** Every time of it, those at which its stock is placed and removed too. */
function moved(train: Train, seconds: number, at: number): Train {
  const move = (time: string | null) => {
    if (time === null) return null;
    const then = parseLayoutTime(time) + seconds;
    if (then < 0 || then > LAST_LAYOUT_SECOND) throw tooFar(at, train.code);
    return toLayoutTimeText(then);
  };
  return {
    ...train,
    placedAt: move(train.placedAt),
    removedAt: move(train.removedAt),
    path: train.path.map((entry) => ({ ...entry, arrive: move(entry.arrive), depart: move(entry.depart) })),
  };
}
