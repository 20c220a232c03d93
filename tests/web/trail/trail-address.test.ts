import { describe, expect, it } from "vitest";
import {
  dayBegins,
  dayEnds,
  readTrailAddress,
  WHOLE_TRAIL,
  writeTrailAddress,
} from "../../../src/web/trail/trail-address.ts";

describe("the address of a part of the trail", () => {
  it("reads as it was written, and says nothing of what was not chosen", () => {
    const part = { ...WHOLE_TRAIL, kind: "handset", code: "H 03&", from: "2026-11-25" };
    expect(readTrailAddress(writeTrailAddress(part))).toEqual(part);
    expect(writeTrailAddress(WHOLE_TRAIL)).toBe("");
  });

  it("takes what is no day for none", () => {
    expect(readTrailAddress("?from=yesterday&to=2026-1-1")).toEqual(WHOLE_TRAIL);
  });

  // the clocks of Europe/London go back on 25 October 2026: IANA time zone database, rule EU
  it("counts a day from midnight to midnight by the club's clocks, however long it is", () => {
    expect(dayBegins("2026-10-25", "Europe/London")).toBe("2026-10-24T23:00:00.000Z");
    expect(dayEnds("2026-10-25", "Europe/London")).toBe("2026-10-26T00:00:00.000Z");
    expect(dayEnds("2026-12-31", "Europe/London")).toBe("2027-01-01T00:00:00.000Z");
    expect([dayBegins("", "Europe/London"), dayEnds("", "Europe/London")]).toEqual(["", ""]);
  });
});
