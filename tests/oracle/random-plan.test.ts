import fc from "fast-check";
import { expect, test } from "vitest";
import { check } from "../../src/planner/check.ts";
import type { Problem, Train } from "../../src/planner/problem.ts";
import { controlStretches } from "./control.ts";
import { journey, runsBackwards } from "./journey.ts";
import { crowds } from "./occupation.ts";
import { SHAPES } from "./plans.ts";
import { randomPlan } from "./random-plan.ts";
import { itemsOf, nextWorking } from "./stock.ts";

/** What the oracles must have seen, and on how many of the plans below at least. */
const TRAITS = {
  "a train comes back into a section": (plan) => plan.trains.some(reverses),
  "a train is longer than the section it stands in": (plan) =>
    plan.trains.some((train) => hangsOut(plan, train)),
  "stock goes on in another train": (plan) =>
    plan.trains.some((train, at) => itemsOf(train).some((item) => nextWorking(plan, item, at))),
  "a train changes over between digital and analog": (plan) =>
    plan.trains.some((train) => changesOver(plan, train)),
  "a locomotive pushes": (plan) => plan.trains.some(({ power }) => power.some(({ atRear }) => atRear)),
  "a shared section is too full": (plan) => crowds(plan).length > 0,
  "stock is placed or removed by hand": (plan) =>
    plan.trains.some(({ placedMs, removedMs }) => placedMs !== null || removedMs !== null),
  "a train passes without a stop": (plan) =>
    plan.trains.some(({ path }) =>
      path.some((call) => call.arriveMs !== null && call.arriveMs === call.departMs),
    ),
  "times run backwards": (plan) => plan.trains.some(runsBackwards),
  "trains clash": (plan) => finds(plan, "section-clash"),
  "a district trips": (plan) => finds(plan, "district-will-trip"),
  "handsets run out": (plan) => finds(plan, "handsets-too-few"),
  "every run gets an output": (plan) => {
    const { runs, status } = check(plan).analog;
    return runs.length > 2 && status === "assigned";
  },
  "outputs run out": (plan) => finds(plan, "outputs-too-few"),
  "an output is too weak": (plan) => finds(plan, "output-over-rating"),
  "a train has an output for two runs": (plan) => {
    const { runs } = check(plan).analog;
    return runs.some((run, at) => runs.some((other, later) => later > at && other.train === run.train));
  },
} satisfies Record<string, (plan: Problem) => boolean>;

const PLANS = 300;
const LEAST = 25;

test.each(Object.entries(TRAITS))("%s in many of the random plans", (_, has) => {
  const plans = Object.values(SHAPES).flatMap((shape) =>
    fc.sample(randomPlan(shape), { seed: 20_270_327, numRuns: PLANS }),
  );
  expect(plans.filter(has).length).toBeGreaterThan(LEAST);
});

function finds(plan: Problem, code: string): boolean {
  return check(plan).findings.some((finding) => finding.code === code);
}

function reverses({ path }: Train): boolean {
  return path.some(({ section }, at) => path.findIndex((entry) => entry.section === section) < at);
}

function hangsOut(plan: Problem, train: Train): boolean {
  return train.path.some(({ section }) => (plan.sections[section]?.lengthMm ?? 0) < train.lengthMm);
}

function changesOver(plan: Problem, train: Train): boolean {
  if (runsBackwards(train)) return false;
  return controlStretches(plan, journey(plan, train)).some(({ sinceMs }) => Number.isFinite(sinceMs));
}
