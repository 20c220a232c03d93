import { afterAll, beforeAll, expect, it } from "vitest";
import { probeApp } from "./probe-app.ts";

// The list under test holds the numbers 1 to 7.
let probe: Awaited<ReturnType<typeof probeApp>>;

beforeAll(async () => {
  probe = await probeApp();
});
afterAll(() => probe.close());

const read = async (query: string) => (await probe.request.get(`/api/numbers?${query}`)).body;

it.each([1, 2, 3, 6, 7, 8])("pages of %d show every item once, in order, and end", async (limit) => {
  const seen: number[] = [];
  let pages = 0;
  for (let next: string | null = ""; next !== null; pages++) {
    const page: { items: number[]; next: string | null } = await read(
      `limit=${limit}${next && `&cursor=${next}`}`,
    );
    seen.push(...page.items);
    next = page.next;
  }
  expect(seen).toEqual([1, 2, 3, 4, 5, 6, 7]);
  expect(pages).toBe(Math.ceil(7 / limit));
});

it("without a limit a page is long enough for a small list", async () => {
  expect(await read("")).toEqual({ items: [1, 2, 3, 4, 5, 6, 7], next: null });
});

it.each(["0", "201", "-1", "2.5", "many"])("a limit of %s is refused", async (limit) => {
  const response = await probe.request.get(`/api/numbers?limit=${limit}`);
  expect(response.status).toBe(400);
  expect(response.body.errors[0].pointer).toBe("/query/limit");
});

it.each(["nonsense", Buffer.from('["1"]').toString("base64url"), Buffer.from("{}").toString("base64url")])(
  "a cursor that no page gave is refused: %s",
  async (cursor) => {
    const response = await probe.request.get(`/api/numbers?cursor=${cursor}`);
    expect(response.status).toBe(400);
    expect(response.body.errors[0].pointer).toBe("/query/cursor");
  },
);
