import { describe, expect, it } from "vitest";
import { differences, fieldWords, valueWords } from "../../../src/web/trail/differences.ts";

describe("a change in the trail", () => {
  it("is told field by field, in words, without what did not change", () => {
    const before = { passedFor: ["branch"], junior: true, note: "", name: "Ivo" };
    const after = { passedFor: ["branch", "main line"], junior: false, note: "Has the key.", name: "Ivo" };
    expect(differences(before, after)).toEqual([
      { field: "junior", was: "yes", is: "no" },
      { field: "note", was: null, is: "Has the key." },
      { field: "passed for", was: "branch", is: "branch, main line" },
    ]);
  });

  it("leaves out what is there for the service", () => {
    const row = { id: "1", club_id: "2", clubId: "2", version: 3, updated_at: "x", updatedAt: "x" };
    expect(differences({ ...row, version: 4 }, null)).toEqual([]);
  });

  it("tells of a record that came, and of one that went, by all it was", () => {
    expect(differences(null, { name: "East" })).toEqual([{ field: "name", was: null, is: "East" }]);
    expect(differences({ name: "East" }, null)).toEqual([{ field: "name", was: "East", is: null }]);
  });

  it("has units for fields, and words for values with parts", () => {
    expect(fieldWords("breakerMa")).toBe("breaker, mA");
    expect(fieldWords("set_up_seconds")).toBe("set up, s");
    expect(fieldWords("handset-desk")).toBe("handset desk");
    expect(valueWords([{ section: "s-01", atMm: 300, note: "" }, { section: "s-02" }])).toBe(
      "section s-01 at, mm 300, section s-02",
    );
    expect([valueWords([]), valueWords(0), valueWords(undefined)]).toEqual([null, "0", null]);
    expect(valueWords("x".repeat(1_000))?.length).toBeLessThan(200);
  });
});
