import { afterAll, beforeAll, expect, it } from "vitest";
import { probeApp } from "./probe-app.ts";

// The record under test is at version 3.
let probe: Awaited<ReturnType<typeof probeApp>>;

beforeAll(async () => {
  probe = await probeApp();
});
afterAll(() => probe.close());

it("a change without If-Match is told to send one (RFC 6585 section 3)", async () => {
  const response = await probe.request.put("/api/probe");
  expect(response.status).toBe(428);
  expect(response.body.detail).toContain("ETag");
});

it.each([
  // RFC 9110 section 13.1.1, compared strongly (8.8.3.2)
  ['"3"', 200],
  ['"2", "3"', 200],
  ['W/"2", "3"', 200],
  ["*", 200],
  ['"2"', 412],
  ['"03"', 412],
  ['"abc"', 412],
  ['W/"3"', 412],
  ['""', 412],
  ["3", 400],
  ['"3', 400],
  ['"3" "4"', 400],
])("If-Match: %s on version 3 gives %d", async (header, status) => {
  const response = await probe.request.put("/api/probe").set("if-match", header);
  expect(response.status).toBe(status);
  if (status === 200) expect(response.headers.etag).toBe('"4"');
  if (status === 400) expect(response.body.errors[0].pointer).toBe("/headers/if-match");
});
