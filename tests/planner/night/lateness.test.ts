import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { batteryLeftMs } from "../../../src/planner/night/battery.ts";
import { findLateness, listDue, type NightWorking } from "../../../src/planner/night/lateness.ts";

const MINUTE = 60;
const at = (hours: number, minutes: number) => (hours * 60 + minutes) * MINUTE;

const goods: NightWorking = {
  code: "101",
  departS: at(10, 0),
  arriveS: at(10, 10),
  state: "waiting",
  departedS: null,
  arrivedS: null,
  statedLateS: null,
};

describe("a train that waits", () => {
  it("is on time until its departure, and from then on late by the clock", () => {
    expect(findLateness(goods, at(9, 0))).toEqual({ lateS: 0, departS: at(10, 0), arriveS: at(10, 10) });
    expect(findLateness(goods, at(10, 0)).lateS).toBe(0);
    expect(findLateness(goods, at(10, 4))).toEqual({ lateS: 240, departS: at(10, 4), arriveS: at(10, 14) });
  });

  it("is as late as was said, until the clock finds more", () => {
    const said = { ...goods, statedLateS: 5 * MINUTE };
    expect(findLateness(said, at(9, 0)).departS).toBe(at(10, 5));
    expect(findLateness(said, at(10, 3)).lateS).toBe(5 * MINUTE);
    expect(findLateness(said, at(10, 7)).lateS).toBe(7 * MINUTE);
  });
});

describe("a train that runs", () => {
  const running: NightWorking = { ...goods, state: "running", departedS: at(10, 3) };

  it("keeps the lateness it left with, unless told otherwise", () => {
    expect(findLateness(running, at(10, 5))).toEqual({ lateS: 180, departS: at(10, 3), arriveS: at(10, 13) });
    expect(findLateness({ ...running, statedLateS: 0 }, at(10, 5)).arriveS).toBe(at(10, 10));
  });

  it("is late by the clock once it should have come", () => {
    expect(findLateness(running, at(10, 20)).lateS).toBe(10 * MINUTE);
  });

  it("is not early for having left early", () => {
    expect(findLateness({ ...running, departedS: at(9, 58) }, at(10, 1)).lateS).toBe(0);
  });
});

describe("a train that has arrived, or is not run", () => {
  it("is as late as it came, whatever the clock shows since", () => {
    const came: NightWorking = { ...goods, state: "arrived", departedS: at(10, 3), arrivedS: at(10, 12) };
    expect(findLateness(came, at(15, 0))).toEqual({ lateS: 120, departS: at(10, 3), arriveS: at(10, 12) });
    expect(findLateness({ ...came, arrivedS: at(10, 8) }, at(15, 0)).lateS).toBe(0);
  });

  it("left out, is not late at all", () => {
    expect(findLateness({ ...goods, state: "left out", statedLateS: 60 }, at(15, 0)).lateS).toBe(0);
  });
});

describe("the next departures", () => {
  const trains = fc.array(
    fc.record({
      departS: fc.integer({ min: 0, max: 100 }),
      state: fc.constantFrom("waiting" as const, "running" as const, "arrived" as const, "left out" as const),
      statedLateS: fc.option(fc.integer({ min: 0, max: 60 })),
    }),
    { maxLength: 12 },
  );

  it("are all trains that wait and no other, soonest first, the same in whatever order they are given", () => {
    fc.assert(
      fc.property(trains, fc.integer({ min: 0, max: 200 }), (made, nowS) => {
        const given = made.map(
          (one, i): NightWorking => ({ ...goods, ...one, code: `${i}`, arriveS: one.departS + 30 }),
        );
        const due = listDue(given, nowS);
        expect(due.map(({ code }) => code).toSorted()).toEqual(
          given
            .filter(({ state }) => state === "waiting")
            .map(({ code }) => code)
            .toSorted(),
        );
        const expected = due.map((train) => Math.max(train.departS + (train.statedLateS ?? 0), nowS));
        expect(expected).toEqual(expected.toSorted((a, b) => a - b));
        expect(listDue(given.toReversed(), nowS)).toEqual(due);
      }),
    );
  });
});

describe("a handset's battery", () => {
  it("loses the time in hands, and never more than it has", () => {
    const stretches = [
      { fromMs: 0, toMs: 30 },
      { fromMs: 50, toMs: 60 },
    ];
    expect(batteryLeftMs(100, [])).toBe(100);
    expect(batteryLeftMs(100, stretches)).toBe(60);
    expect(batteryLeftMs(25, stretches)).toBe(0);
  });
});
