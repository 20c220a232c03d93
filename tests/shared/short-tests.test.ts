import { expect, it } from "vitest";
import { latestTest, type ShortTest } from "../../shared/short-tests.ts";

const test = (code: string, given: Partial<ShortTest>): ShortTest => ({
  ...{ code, district: "D", testedOn: "2027-03-20", testedAt: null, result: "passed", by: "", note: "" },
  ...given,
});
const last = (...tests: ShortTest[]) =>
  [tests, [...tests].reverse()].map((all) => latestTest(all, "D")?.code);

it("the last short test of a district counts: by day, then by time", () => {
  // whatever their codes: what failed in the morning was mended and passed at noon
  const morning = test("z", { testedAt: "09:10", result: "failed" });
  const noon = test("a", { testedAt: "12:05" });
  expect(last(morning, noon)).toEqual(["a", "a"]);
  expect(last(noon, test("z", { testedAt: "12:05:30", result: "failed" }))).toEqual(["z", "z"]);
  expect(last(noon, test("b", { testedOn: "2027-03-21" }))).toEqual(["b", "b"]);
});

it("one without a time is its day's first", () => {
  expect(last(test("z", { result: "failed" }), test("a", { testedAt: "00:01" }))).toEqual(["a", "a"]);
});

it("of two that nothing tells apart, one that failed counts", () => {
  expect(last(test("a", { result: "failed" }), test("z", {}))).toEqual(["a", "a"]);
});

it("a district without a test has none that counts", () => {
  expect(latestTest([test("a", {})], "E")).toBeUndefined();
});
