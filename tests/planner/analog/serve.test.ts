import { expect, test } from "vitest";
import { createAllowance } from "../../../src/planner/analog/allowance.ts";
import { type RatedDemand, serve } from "../../../src/planner/analog/serve.ts";
import { range } from "./random-demands.ts";

const demand = (train: number, startMs: number, endMs: number, given: Partial<RatedDemand>): RatedDemand => ({
  train,
  startMs,
  endMs,
  sections: [0],
  candidates: [0, 1],
  rated: given.candidates ?? [0, 1],
  ...given,
});

test("a train gets an output that can carry it wherever the others can do without that one", () => {
  const light = demand(0, 0, 10, {});
  const heavy = demand(1, 5, 15, { rated: [0] });
  expect(serve([light, heavy], createAllowance(1_000))).toMatchObject({
    status: "assigned",
    outputs: [1, 0],
  });
});

test("where the ratings leave no way, outputs are given past them", () => {
  const heavy = demand(0, 0, 10, { rated: [0] });
  const alsoHeavy = demand(1, 5, 15, { rated: [0] });
  const service = serve([heavy, alsoHeavy], createAllowance(1_000));
  expect(service.status).toBe("assigned");
  expect([...service.outputs].sort()).toEqual([0, 1]);
});

test("a train too heavy for every output does not take the others' ratings away", () => {
  const tooHeavy = demand(0, 0, 10, { rated: [] });
  const heavy = demand(1, 5, 15, { rated: [0] });
  expect(serve([tooHeavy, heavy], createAllowance(1_000))).toMatchObject({
    status: "assigned",
    outputs: [1, 0],
  });
});

test("three trains at once on two outputs: all three are the proof, one more output serves, two are served", () => {
  const service = serve(
    range(3).map((train) => demand(train, train, 10 + train, { sections: [train, 7] })),
    createAllowance(1_000),
  );
  expect(service).toMatchObject({
    status: "impossible",
    core: [0, 1, 2],
    extras: { needed: 1, sections: [0, 1, 2, 7] },
  });
  expect([...service.outputs].sort()).toEqual([-1, 0, 1]);
});

test("one after the other, trains share one output: the end of one is no overlap with the start of the next", () => {
  const service = serve(
    range(3).map((train) => demand(train, 10 * train, 10 * train + 10, { candidates: [0] })),
    createAllowance(1_000),
  );
  expect(service).toMatchObject({ status: "assigned", outputs: [0, 0, 0] });
});

test("where no instant is too full, the chain of trains that still cannot be shared out is the proof", () => {
  // first and last are apart in time, and whichever output the middle two take, one neighbour is left without
  const first = demand(0, 0, 10, { candidates: [0] });
  const second = demand(1, 5, 20, { candidates: [0, 1] });
  const third = demand(2, 15, 30, { candidates: [1, 2] });
  const fourth = demand(3, 25, 40, { candidates: [2] });
  expect(serve([first, second, third, fourth], createAllowance(1_000))).toMatchObject({
    status: "impossible",
    core: [0, 1, 2, 3],
  });
  expect(serve([first, second, third], createAllowance(1_000)).status).toBe("assigned");
});

test("without the search it takes, nothing is claimed", () => {
  const service = serve(
    range(8).map((train) => demand(train, train, 3 + train, { candidates: [0, 1, 2] })),
    createAllowance(2),
  );
  expect(service).toMatchObject({ status: "not-decided", core: [], extras: null });
});

test("where the search cannot say how many more outputs would serve, those that can be served still are", () => {
  const four = range(4).map((train) => demand(train, train, 20 + train, { candidates: [0, 1, 2] }));
  const later = range(4).map((at) => demand(4 + at, 15 + 10 * at, 25 + 10 * at, { candidates: [3] }));
  const service = serve([...four, ...later], createAllowance(8));
  expect(service).toMatchObject({ status: "impossible", core: [0, 1, 2, 3], extras: null });
  expect(service.outputs.filter((output) => output >= 0).length).toBe(7);
});

test("all searches of one check share what work they may do, so nothing hangs", () => {
  // two hundred at once on three outputs, then a proof, then the fewest extra outputs: far more than is allowed
  // here
  const allowance = createAllowance(20_000, 50_000);
  const crowd = range(200).map((train) => demand(train, train % 7, 50 + train, { candidates: [0, 1, 2] }));
  const service = serve(crowd, allowance);
  expect(service.status).not.toBe("assigned");
  expect(service.extras).toBeNull();
  expect(allowance.looks).toBeLessThan(0);
  expect(allowance.looks).toBeGreaterThan(-200_000);
});
