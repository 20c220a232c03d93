import { expect, it } from "vitest";
import { newId } from "../../src/lib/ids.ts";

// RFC 9562, appendix A.6: a UUIDv7 of 2022-02-22 14:22:22.00 -05:00 starts 017F22E2-79B0-7
it("an id starts with its time, its version and its variant", () => {
  expect(newId(Date.parse("2022-02-22T14:22:22.00-05:00"))).toMatch(
    /^017f22e2-79b0-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/,
  );
});

it("later ids sort after earlier ones, and no two are alike", () => {
  const ids = [1, 2, 1_000, 2 ** 47].map((ms) => newId(ms));
  expect(ids.toSorted()).toEqual(ids);
  expect(new Set(Array.from({ length: 1_000 }, () => newId(5))).size).toBe(1_000);
});
