import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { makePerson, PASSWORD } from "../../support/people.ts";
import { appOn, testApp } from "../../support/test-app.ts";
import { heldClock } from "./held-clock.ts";

const clock = heldClock("2026-11-25T18:00:00Z");
let app: Awaited<ReturnType<typeof testApp>>;
let other: Awaited<ReturnType<typeof appOn>>;

beforeAll(async () => {
  app = await testApp({ accounts: true, clock });
  other = await appOn(app.connection, { accounts: true, clock });
});
afterAll(async () => {
  await other.close();
  await app.close();
});

const guess = (email: string, password = "not this one", on: Pick<typeof app, "request"> = app) =>
  on.request.post("/api/sign-in").send({ email, password });

async function guessTimes(email: string, times: number): Promise<number[]> {
  const statuses: number[] = [];
  for (let i = 0; i < times; i++) statuses.push((await guess(email)).status);
  return statuses;
}

describe("guessing a password", () => {
  it("is free five times, then waits twice as long each time, up to a quarter of an hour", async () => {
    const { email } = await makePerson(app);
    expect(await guessTimes(email, 5)).toEqual([401, 401, 401, 401, 401]);
    const waits: number[] = [];
    for (let i = 0; i < 12; i++) {
      const told = await guess(email);
      expect(told.status).toBe(429);
      expect(told.body.code).toBe("too-many-attempts");
      const seconds = Number(told.get("retry-after"));
      waits.push(seconds);
      clock.pass(seconds * 1_000);
      expect((await guess(email)).status).toBe(401);
    }
    expect(waits).toEqual([1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 900, 900]);
  });

  it("does not get through by knowing the password while one must wait", async () => {
    const { email } = await makePerson(app);
    await guessTimes(email, 5);
    expect((await guess(email, PASSWORD)).status).toBe(429);
    clock.pass(1_000);
    expect((await guess(email, PASSWORD)).status).toBe(204);
    expect(await guessTimes(email, 5)).toEqual([401, 401, 401, 401, 401]);
  });

  it("is slowed alike where nobody has the address", async () => {
    expect(await guessTimes("nobody@example.org", 6)).toEqual([401, 401, 401, 401, 401, 429]);
  });

  it("is counted over all processes, and many at once as many", async () => {
    clock.pass(2 * 3_600_000);
    const { email } = await makePerson(app);
    const answers = await Promise.all(
      Array.from({ length: 20 }, (_, i) => guess(email, "not this one", i % 2 === 0 ? app : other)),
    );
    const heard = answers.filter(({ status }) => status === 401);
    expect(heard).toHaveLength(5);
    expect(answers.filter(({ status }) => status === 429)).toHaveLength(15);
  });

  it("from one address is slowed whomever it is at", async () => {
    clock.pass(2 * 3_600_000);
    const statuses: number[] = [];
    for (let i = 0; i < 60; i++) statuses.push((await guess(`someone${i}@example.org`)).status);
    expect(statuses.slice(0, 50).every((status) => status === 401)).toBe(true);
    expect(statuses.slice(50).every((status) => status === 429)).toBe(true);
  });

  it("is counted at the address that a trusted proxy tells, and at its own where nobody asked for its word", async () => {
    clock.pass(2 * 3_600_000);
    const behind = await appOn(app.connection, {
      accounts: true,
      clock,
      trustedProxies: ["127.0.0.1", "::1"],
    });
    const from = (on: Pick<typeof app, "request">, i: number) =>
      guess(`visitor${i}@example.org`, "not this one", {
        request: { post: (path: string) => on.request.post(path).set("x-forwarded-for", `203.0.113.${i}`) },
      } as Pick<typeof app, "request">);
    try {
      const apart: number[] = [];
      for (let i = 0; i < 60; i++) apart.push((await from(behind, i)).status);
      expect(apart.every((status) => status === 401)).toBe(true);
      const together: number[] = [];
      for (let i = 0; i < 60; i++) together.push((await from(app, 100 + i)).status);
      expect(together.at(-1)).toBe(429);
    } finally {
      await behind.close();
    }
  });
});
