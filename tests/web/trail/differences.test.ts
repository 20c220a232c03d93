import { describe, expect, it } from "vitest";
import type { TrailEntry } from "../../../shared/trail.ts";
import { differences, fieldWords, valueWords } from "../../../src/web/trail/differences.ts";

const ZONE = "Europe/London";

type JSONValue = TrailEntry["changes"][number]["from"];

describe("a change in the trail", () => {
  const change = (field: string, from: JSONValue, to: JSONValue, withheld = false) => ({
    field,
    from,
    to,
    withheld,
  });

  it("is told field by field, in words, in the order of their names", () => {
    const changes = [
      change("passedFor", ["branch"], ["branch", "main line"]),
      change("junior", true, false),
      change("note", "", "Has the key."),
    ];
    expect(differences(changes, ZONE)).toEqual([
      { field: "junior", was: "yes", is: "no", isWithheld: false },
      { field: "note", was: null, is: "Has the key.", isWithheld: false },
      { field: "passed for", was: "branch", is: "branch, main line", isWithheld: false },
    ]);
  });

  it("leaves out what reads the same, and keeps what is not told", () => {
    const changes = [change("note", null, ""), change("passwordHash", null, null, true)];
    expect(differences(changes, ZONE).map(({ field }) => field)).toEqual(["password hash"]);
  });

  it("tells instants by the clocks of the club room", () => {
    expect(valueWords("2027-07-20T20:55:15+00:00", ZONE)).toBe("Tue 20 Jul 2027, 21:55");
    expect(valueWords("2027-07-20", ZONE)).toBe("2027-07-20");
  });

  it("has units for fields, and words for values with parts", () => {
    expect(fieldWords("breakerMa")).toBe("breaker, mA");
    expect(fieldWords("set_up_seconds")).toBe("set up, s");
    expect(fieldWords("handset-desk")).toBe("handset desk");
    expect(valueWords([{ section: "s-01", atMm: 300, note: "" }, { section: "s-02" }], ZONE)).toBe(
      "section s-01 at, mm 300, section s-02",
    );
    expect([valueWords([], ZONE), valueWords(0, ZONE), valueWords(undefined, ZONE)]).toEqual([
      null,
      "0",
      null,
    ]);
    expect(valueWords("x".repeat(1_000), ZONE)?.length).toBeLessThan(200);
  });
});
