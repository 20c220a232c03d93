import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readAddress, toSearch } from "../../../src/web/plan/address.ts";

const NOTHING = { finding: null, at: null, from: null, to: null };

describe("the address of a plan", () => {
  it("is empty while nothing was chosen", () => {
    expect(toSearch(NOTHING)).toBe("");
    expect(readAddress("")).toEqual(NOTHING);
  });

  it("says times as the layout clock does", () => {
    expect(toSearch({ ...NOTHING, at: 70_930, from: 68_400, to: 90_600 })).toBe(
      "?at=19:42:10&from=19:00&to=25:10",
    );
  });

  it("comes back as it went out, whatever a finding is called", () => {
    const seconds = fc.integer({ min: 0, max: 300_000 });
    fc.assert(
      fc.property(fc.string({ minLength: 1, unit: "grapheme" }), seconds, seconds, (finding, at, from) => {
        const address = { finding, at, from, to: from + 60 };
        expect(readAddress(toSearch(address))).toEqual(address);
      }),
    );
  });

  it("ignores what cannot be a time or a window", () => {
    expect(readAddress("?at=noon&from=9:99&to=10:00")).toEqual(NOTHING);
    expect(readAddress("?from=11:00&to=10:00")).toEqual(NOTHING);
    expect(readAddress("?from=10:00")).toEqual(NOTHING);
  });
});
