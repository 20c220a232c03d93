import { describe, expect, it } from "vitest";
import { planDocument } from "../../../shared/documents.ts";
import type { PlanParts } from "../../../src/database/records/read-plan.ts";
import { toLayoutText, toRealMs } from "../../../src/features/check/clock.ts";
import { examplePlan } from "../../../src/features/check/example-plan.ts";
import { toPlanSource, toProblem } from "../../../src/features/check/mapper.ts";
import { toStoredSource } from "../../../src/features/check/service.ts";

type Plan = typeof examplePlan;

/** The example with one thing changed, as far as it can be prepared. */
function prepare(change: (plan: Plan) => void) {
  const plan = structuredClone(examplePlan);
  change(plan);
  return toProblem(toPlanSource(planDocument.parse(plan)));
}

function faultsOf(change: (plan: Plan) => void) {
  const prepared = prepare(change);
  return prepared.ok ? [] : prepared.faults;
}

describe("a plan becomes a problem", () => {
  it("turns layout times into real ms since the slot's start: 10:04 is 60 s after 10:00 at ratio 4", () => {
    const prepared = prepare(() => {});
    if (!prepared.ok) throw new Error(JSON.stringify(prepared.faults));
    const [train] = prepared.plan.problem.trains;
    expect(train?.path.map((p) => [p.arriveMs, p.departMs])).toEqual([
      [null, 0],
      [null, null],
      [60_000, 90_000],
      [null, null],
      [150_000, null],
    ]);
    expect(train?.lengthMm).toBe(1_200);
    expect(prepared.plan.problem.slot).toEqual({ startMs: 0, endMs: 900_000 });
  });

  it("names every unknown reference at its place, not just the first", () => {
    const faults = faultsOf((plan) => {
      plan.layout.links?.push({ code: "bad", from: "E1", to: "E9" });
      plan.trains[0]?.path.splice(1, 1, { section: "L9" });
    });
    expect(faults.map((f) => f.pointer)).toEqual(["/layout/links/4/to", "/trains/0/path/1/section"]);
    expect(faults[0]?.detail).toContain("There is no section E9");
  });

  it("refuses a code that stands twice", () => {
    const [fault] = faultsOf((plan) =>
      plan.trains.push(structuredClone(plan.trains[0] as Plan["trains"][0])),
    );
    expect(fault?.pointer).toBe("/trains/1/code");
  });

  it("asks how an area runs where a section can be fed both ways", () => {
    const faults = faultsOf((plan) => {
      const section = plan.layout.sections?.[1];
      if (section) section.wiring = "both";
      plan.slot.areas = [];
    });
    expect(faults).toEqual([
      {
        pointer: "/slot/areas",
        detail: expect.stringContaining("say whether area main runs analog or digital"),
      },
    ]);
  });

  it("a section wired otherwise than its area runs is dead for the night", () => {
    const prepared = prepare((plan) => {
      plan.slot.areas = [{ area: "main", control: "analog" }];
    });
    expect(prepared.ok && prepared.plan.problem.sections.every((s) => s.control === "dead")).toBe(true);
  });

  it.each([
    ["/trains/0/path/0/depart", (p: Plan) => delete p.trains[0]?.path[0]?.depart],
    ["/trains/0/path/4/arrive", (p: Plan) => delete p.trains[0]?.path[4]?.arrive],
    ["/trains/0/path/2/depart", (p: Plan) => delete p.trains[0]?.path[2]?.depart],
    [
      "/trains/0/lengthMm",
      (p: Plan) => {
        const train = p.trains[0];
        if (train) Object.assign(train, { motivePower: [], rakes: [] });
      },
    ],
    ["/slot/layoutEnd", (p: Plan) => Object.assign(p.slot, { layoutEnd: "9:00" })],
    ["/slot/layoutEnd", (p: Plan) => Object.assign(p.slot, { clockRatio: 0.001 })],
    [
      "/layout/sections/0/wiring",
      (p: Plan) => Object.assign(p.layout.sections?.[0] as object, { changeover: true }),
    ],
  ])("refuses at %s", (pointer, change) => {
    expect(faultsOf(change).map((f) => f.pointer)).toContain(pointer);
  });

  const ADA = { code: "ada", name: "Ada" };
  const turn = { train: "101", member: "ada" };
  const spare = { code: "spare", addressKind: "short", address: 9 } as const;
  it.each<[string, (p: Plan) => unknown]>([
    ["/crew/0/member", (p) => Object.assign(p, { members: [], crew: [turn] })],
    ["/crew/0/handset", (p) => Object.assign(p, { members: [ADA], crew: [{ ...turn, handset: "H9" }] })],
    ["/crew/0/train", (p) => Object.assign(p, { members: [ADA], crew: [{ ...turn, train: "999" }] })],
    ["/crew/1/train", (p) => Object.assign(p, { members: [ADA], crew: [turn, turn] })],
    ["/members/1/code", (p) => Object.assign(p, { members: [ADA, ADA] })],
    ["/roster/decoders/1/locomotive", (p) => p.roster.decoders?.push({ ...spare, locomotive: "E8" })],
    ["/roster/decoders/1/locomotive", (p) => p.roster.decoders?.push({ ...spare, locomotive: "E7" })],
    ["/roster/decoders/1/code", (p) => p.roster.decoders?.push({ ...spare, code: "E7-decoder" })],
  ])("refuses at %s alone", (pointer, change) => {
    expect(faultsOf(change).map((f) => f.pointer)).toEqual([pointer]);
  });

  it("takes decoders that are in no locomotive, as many as there are", () => {
    expect(faultsOf((p) => p.roster.decoders?.push(spare, { ...spare, code: "other" }))).toEqual([]);
  });

  it("forgets in a stored slot who had a train that it runs no more", () => {
    const at = new Date("2027-03-20T19:00:00Z");
    const turns = [
      { train: "101", member: "ada", handset: null },
      { train: "of another version", member: "ada", handset: null },
    ];
    const { trains } = planDocument.parse(examplePlan);
    const source = toStoredSource({
      trains,
      otherSlots: [],
      crew: { members: [], turns, isSupervised: true },
      slot: { startsAt: at, endsAt: at, sessionStartsAt: at },
    } as unknown as PlanParts);
    expect(source.crew.turns).toEqual([turns[0]]);
  });

  it("a train belongs to the slot in which it departs; others are named", () => {
    const prepared = prepare((plan) => {
      plan.trains.push({ ...structuredClone(plan.trains[0] as Plan["trains"][0]), code: "99" });
      plan.trains[1]?.path.forEach((entry) => {
        if (entry.depart) entry.depart = `9${entry.depart.slice(2)}`;
        if (entry.arrive) entry.arrive = `9${entry.arrive.slice(2)}`;
      });
    });
    expect(prepared.ok && prepared.plan.trainsNotInSlot).toEqual(["99"]);
    expect(prepared.ok && prepared.plan.problem.trains.length).toBe(1);
  });
});

describe("the layout clock", () => {
  const frame = { startMs: 0, endMs: 1e7, layoutStartSeconds: 36_000, clockRatio: 4, sessionStart: null };

  // Layout clock: an hour takes 15 real minutes at ratio 4, 10 at 6, 7.5 at 8, 5 at 12 (arithmetic of the definition)
  it.each([
    [4, 900_000],
    [6, 600_000],
    [8, 450_000],
    [12, 300_000],
  ])("at ratio %d an hour takes %d ms", (clockRatio, ms) => {
    expect(toRealMs({ ...frame, clockRatio }, 39_600)).toBe(ms);
  });

  it("rounds instants once, halves up: a third of a ratio-3 second", () => {
    expect(toRealMs({ ...frame, clockRatio: 3 }, 36_001)).toBe(333);
    expect(toRealMs({ ...frame, clockRatio: 16 }, 36_001)).toBe(63); // 62.5
    expect(toRealMs({ ...frame, clockRatio: 16 }, 35_999)).toBe(-62); // −62.5
  });

  it("shows 22 real minutes at ratio 10 as 3 h 40 later", () => {
    expect(toLayoutText({ ...frame, clockRatio: 10 }, 22 * 60_000)).toBe("13:40");
  });

  it("runs past midnight", () => {
    expect(toLayoutText({ ...frame, layoutStartSeconds: 86_000 }, 900_000)).toBe("24:53:20");
  });
});
