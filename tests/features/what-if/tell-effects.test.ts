import { setImmediate } from "node:timers/promises";
import { describe, expect, it } from "vitest";
import type { CheckReport } from "../../../shared/check.ts";
import type { RecordChanges } from "../../../shared/what-if.ts";
import { createWhatIfService } from "../../../src/features/what-if/service.ts";
import type { ComingSlot, WhatIfStore } from "../../../src/features/what-if/store.ts";
import { type Attempt, toEffect, toHeadline } from "../../../src/features/what-if/tell-effects.ts";

const slot = (name: string) =>
  ({ session: name, name, slot: "only", slotName: "Only", startsAt: new Date(0), parts: {} }) as ComingSlot;
const report = (verdict: CheckReport["verdict"]) =>
  ({ verdict, stops: verdict === "runs" ? 0 : 1, warnings: 0, findings: [] }) as unknown as CheckReport;
const [RUNS, STOPPED, IN_PIECES] = [report("runs"), report("stopped"), "There is no locomotive V13."];

const headline = (leftOut: number, ...nights: [string, Attempt, Attempt][]) =>
  toHeadline(
    nights.map(([name, before, after]) => toEffect(slot(name), before, after)),
    leftOut,
  );

describe("the headline of a change's effects", () => {
  it.each<[string, Attempt, Attempt, string]>([
    ["stops a night", RUNS, STOPPED, "March would stop."],
    ["leaves the plan of a night that runs in pieces", RUNS, IN_PIECES, "March would stop."],
    [
      "leaves the plan of a stopped night in pieces",
      STOPPED,
      IN_PIECES,
      "March could no longer be checked: the plan would not fit together.",
    ],
    ["mends a stopped night", STOPPED, RUNS, "March would run again."],
    ["mends a plan that was in pieces", IN_PIECES, RUNS, "March would run again."],
    [
      "mends a plan that was in pieces, but not the night",
      IN_PIECES,
      STOPPED,
      "March could be checked again, and would be stopped.",
    ],
    [
      "leaves a plan in pieces",
      IN_PIECES,
      IN_PIECES,
      "March cannot be checked, with this or without: the plan does not fit together.",
    ],
    ["leaves a night as it is", RUNS, RUNS, "No night to come is changed by this."],
  ])("says so where the change %s", (_, before, after, said) => {
    expect(headline(0, ["March", before, after])).toBe(said);
    expect(headline(0, ["April", RUNS, RUNS], ["March", before, after])).toBe(said);
  });

  it("names the worst first", () => {
    const said = headline(0, ["April", STOPPED, RUNS], ["March", STOPPED, IN_PIECES], ["May", RUNS, STOPPED]);
    expect(said).toBe("May would stop.");
  });

  it("speaks only of the slots that were looked at", () => {
    expect(headline(3, ["April", RUNS, RUNS], ["March", RUNS, RUNS])).toBe(
      "None of the next 2 slots is changed by this.",
    );
    expect(headline(3, ["March", STOPPED, { ...STOPPED, stops: 2 }], ["April", RUNS, RUNS])).toBe(
      "None of the next 2 slots would stop by this; some findings change.",
    );
  });
});

describe("the effects of a change on many nights", () => {
  it("let others have their turn between one check and the next", async () => {
    const happened: string[] = [];
    const store = {
      readComing: async () => ({
        common: { policy: null, layout: {}, roster: {}, handsets: [] },
        slots: [slot("March"), slot("April")],
        leftOut: 0,
      }),
    } as unknown as WhatIfStore;
    const service = createWhatIfService(store, {
      clock: { now: () => new Date(0) },
      checkParts: () => {
        happened.push("check");
        return RUNS;
      },
      findTrainFlaws: () => [],
      draftWith: () => Promise.reject(new Error("nothing is kept here")),
    });
    const changes = { removed: {}, policy: null, layout: {}, roster: {}, handsets: [] };
    let isTold = false;
    const told = service.effects("north", changes as unknown as RecordChanges).finally(() => {
      isTold = true;
    });
    while (!isTold) {
      await setImmediate();
      happened.push("other");
    }
    await told;
    expect(happened.filter((what) => what === "check")).toHaveLength(4);
    expect(happened.join(" ")).not.toContain("check check");
  });
});
