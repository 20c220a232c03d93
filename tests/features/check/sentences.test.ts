import { describe, expect, it } from "vitest";
import { FINDING_CODES } from "../../../shared/vocabulary.ts";
import { type WordedProblem, word } from "../../../src/features/check/sentences.ts";
import { amps, counted, duration, listed } from "../../../src/features/check/wording.ts";
import type { Finding } from "../../../src/planner/findings.ts";

const named = (code: string) => ({ code });

/** Only the codes matter to the sentences. */
const problem = {
  trains: [named("T12"), named("T47"), named("T60")],
  sections: [named("L1"), named("L2")],
  districts: [named("East")],
  supplies: [named("Booster")],
  outputs: [named("A1")],
  controllers: [named("Panel")],
  commandSystems: [named("DG")],
  systemNames: ["Digital"],
  locomotives: [named("E7")],
  rakes: [named("R3")],
  crew: { members: [named("M5")], turns: [], isSupervised: true },
  handsets: [named("H2")],
} as unknown as WordedProblem;

const finding: Finding = {
  code: "section-clash",
  severity: "stops",
  span: { startMs: 1_000, endMs: 62_000 },
  trains: [0, 1],
  sections: [0, 1],
  districts: [],
  supplies: [],
  outputs: [],
  controllers: [],
  commandSystems: [],
  locomotives: [0],
  rakes: [0],
  members: [0],
  handsets: [0],
  measured: 2_910,
  limit: 2_500,
  unit: "mA",
  atMs: 1_000,
  overMs: 61_000,
  shares: [
    { train: 1, ma: 800 },
    { train: 0, ma: 1_810 },
  ],
  pathEntry: 1,
  needed: 2,
};

describe("findings in words", () => {
  const text = (ms: number) => `10:0${Math.floor(ms / 60_000)}`;

  it.each(FINDING_CODES)("%s names what it is about, whole, in one sentence, and a cure", (code) => {
    const things = { districts: [0], supplies: [0], outputs: [0], controllers: [0], commandSystems: [0] };
    const kind = /^(district|supply|output|controller)-/.exec(code)?.[1];
    const only = kind === undefined ? things : { [`${kind === "supply" ? "supplie" : kind}s`]: [0] };
    const { sentence, cure } = word(
      {
        ...finding,
        ...(kind ? only : {}),
        ...(/^(handset|address)/.test(code) ? { commandSystems: [0] } : {}),
        code,
      },
      problem,
      text,
    );
    for (const words of [sentence, cure]) {
      expect(words).toMatch(/^\p{Lu}.*\.$/u);
      expect(words).not.toMatch(/\?|undefined|NaN|null|\$\{/);
    }
    expect(sentence).toMatch(/T12|T47|L1|East|Booster|A1|Panel|Digital|M5|H2|10:00/);
  });

  it("tells who makes up a peak, most first, and what accessories add", () => {
    const { sentence } = word({ ...finding, code: "supply-over-rating", supplies: [0] }, problem, text);
    expect(sentence).toBe(
      "Supply Booster is overloaded at 10:00: trains T12 (1.81 A) and T47 (800 mA) with accessories (300 mA) draw 2.91 A, and it can give 2.50 A (for 1 min 1 s in all).",
    );
  });
});

describe("what findings say of figures", () => {
  const told = (given: Partial<Finding>) =>
    word({ ...finding, ...given }, problem, (ms) => `10:0${Math.floor(ms / 60_000)}`);
  const district = { districts: [0], shares: [] };

  it("has places enough to tell what is above its limit from the limit", () => {
    const shares = [{ train: 0, ma: 3_001 }];
    const trip = told({ ...district, code: "district-will-trip", shares, measured: 3_001, limit: 3_000 });
    expect(trip.sentence).toContain("draws 3.001 A, and its breaker opens at 3.000 A");
    const volts = { ...district, unit: "V" } as const;
    const low = told({ ...volts, code: "district-volts-too-low", measured: 8.46, limit: 8.5 });
    expect(low.sentence).toContain("8.46 V are left at 10:00: 8.50 V is the least");
    const drop = told({ ...volts, code: "district-drop-too-big", measured: 3.54, limit: 3.48 });
    expect(drop.sentence).toContain("lose 3.54 V at its peak at 10:00: 3.48 V is as much");
    const busy = told({ code: "section-too-busy", measured: 0.75004, limit: 0.75, unit: "share" });
    expect(busy.sentence).toContain("taken for 75.004 % of the time");
    expect(busy.sentence).toContain("more than 75 %");
  });

  it("says that nothing is left where the wires would lose more than the supply gives", () => {
    const { sentence } = told({
      ...district,
      code: "district-volts-too-low",
      measured: -7.5,
      limit: 8.5,
      unit: "V",
    });
    expect(sentence).toContain("nothing is left of the volts at 10:00");
    expect(sentence).not.toContain("-");
  });

  it("blames accessories that are too much by themselves, and not trains", () => {
    const supply = { supplies: [0], code: "supply-over-rating", limit: 5_000 } as const;
    const alone = told({ ...supply, measured: 6_000, shares: [] });
    expect(alone.sentence).toContain("accessories (6.00 A) draw 6.00 A, and it can give 5.00 A");
    expect(alone.cure).toMatch(/accessories/);
    expect(alone.cure).not.toMatch(/train/);
    const both = told({ ...supply, measured: 6_000, shares: [{ train: 0, ma: 1_500 }] });
    expect(both.cure).toContain("Move one of these trains");
  });

  it("advises groups after a trip only where there are any", () => {
    const restart = { ...district, code: "district-trips-on-restart" } as const;
    expect(told({ ...restart, needed: 2 }).cure).toContain("Bring it up in groups, as its report says");
    expect(told({ ...restart, needed: null }).cure).toContain("Take a train off before power returns");
  });

  it("promises no conductor that would do", () => {
    for (const code of [
      "district-drop-too-big",
      "district-volts-too-low",
      "district-fault-not-seen",
    ] as const)
      expect(told({ ...district, code }).cure).toContain("if one does");
  });

  it("counts those that answer to one address", () => {
    const three = { ...problem, locomotives: ["E7", "E8", "E9"].map(named) } as unknown as WordedProblem;
    const used = {
      ...finding,
      code: "address-used-twice",
      commandSystems: [0],
      rakes: [],
      measured: 3,
    } as const;
    expect(word({ ...used, locomotives: [0, 1, 2] }, three, String)).toEqual({
      sentence: "Locomotives E7, E8 and E9 all answer to address 3 of Digital: what one is told, all do.",
      cure: "Let one of them keep it: give each of the others another address, or leave it at home.",
    });
    expect(word({ ...used, locomotives: [0, 1] }, three, String).sentence).toContain("both answer");
  });
});

describe("wording", () => {
  it("lists with an and, and stops at four", () => {
    expect([[], ["a"], ["a", "b"], ["a", "b", "c"]].map((l) => listed(l))).toEqual([
      "",
      "a",
      "a and b",
      "a, b and c",
    ]);
    expect(listed(["a", "b", "c", "d", "e"])).toBe("a, b, c and 2 more");
    expect(counted("section", ["L1", "L2"])).toBe("sections L1 and L2");
  });

  it("writes amps and durations as people do", () => {
    expect([450, 999, 1_000, 2_905].map((ma) => amps(ma))).toEqual(["450 mA", "999 mA", "1.00 A", "2.90 A"]);
    expect([1_000, 2_540, 38_000, 120_000, 125_000].map(duration)).toEqual([
      "1 s",
      "2.5 s",
      "38 s",
      "2 min",
      "2 min 5 s",
    ]);
  });
});
