import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { makePerson, type TestPerson } from "../../support/people.ts";
import { testApp } from "../../support/test-app.ts";
import { makeClub } from "../example-club.ts";
import { heldClock } from "./held-clock.ts";

const DAY_MS = 86_400_000;
const clock = heldClock("2026-11-25T18:00:00Z");
let app: Awaited<ReturnType<typeof testApp>>;
let owner: TestPerson;

beforeAll(async () => {
  app = await testApp({ accounts: true, clock });
  owner = await makePerson(app, { now: clock.now() });
  for (const code of ["north", "south"])
    await makeClub({ request: owner.agent as unknown as typeof app.request }, code);
});
afterAll(() => app.close());

async function make(change: object = {}): Promise<{ id: string; token: string }> {
  const expiresAt = new Date(clock.now().getTime() + 30 * DAY_MS).toISOString();
  const draft = { name: "Backup", scope: "read", expiresAt, ...change };
  const { body } = await owner.agent.post("/api/me/tokens").send(draft).expect(201);
  return body;
}

const by = (token: string) => ({
  get: (path: string) => app.request.get(path).set("authorization", `Bearer ${token}`),
  post: (path: string, body: object) =>
    app.request.post(path).set("authorization", `Bearer ${token}`).send(body),
});

describe("a personal access token", () => {
  it("is shown once, and kept only as a hash", async () => {
    const { id, token } = await make();
    const list = await owner.agent.get("/api/me/tokens").expect(200);
    expect(list.body.items.map((one: { id: string }) => one.id)).toContain(id);
    expect(list.text).not.toContain(token);
    expect(JSON.stringify(await app.prisma.accessToken.findMany())).not.toContain(token);
  });

  it("for reading reads and computes, and changes nothing", async () => {
    const { token } = await make();
    await by(token).get("/api/clubs/north/sections").expect(200);
    const area = { code: "new", name: "New" };
    const { body } = await by(token).post("/api/clubs/north/areas", area).expect(403);
    expect(body.code).toBe("not-permitted");
    const { token: writing } = await make({ scope: "write" });
    await by(writing).post("/api/clubs/north/areas", area).expect(201);
  });

  it("for one club is good in no other", async () => {
    const { token } = await make({ club: "north" });
    await by(token).get("/api/clubs/north").expect(200);
    await by(token).get("/api/clubs/south").expect(404);
    const { body } = await by(token).get("/api/clubs").expect(200);
    expect(body.items.map(({ code }: { code: string }) => code)).toEqual(["north"]);
  });

  it("makes no other, changes no password, and erases nobody", async () => {
    const { token } = await make({ scope: "write" });
    const expiresAt = new Date(clock.now().getTime() + DAY_MS).toISOString();
    await by(token).post("/api/me/tokens", { name: "More", scope: "write", expiresAt }).expect(403);
    await by(token).post("/api/me/password", { current: "x", password: "a kettle in the box" }).expect(403);
    await by(token).post("/api/me/erase", { password: "x" }).expect(403);
  });

  it("ends when it is revoked, and at its time", async () => {
    const { id, token } = await make();
    await owner.agent.delete(`/api/me/tokens/${id}`).expect(204);
    await by(token).get("/api/me").expect(401);
    const { token: short } = await make({
      expiresAt: new Date(clock.now().getTime() + 60_000).toISOString(),
    });
    await by(short).get("/api/me").expect(200);
    clock.pass(60_000);
    await by(short).get("/api/me").expect(401);
  });

  it("lasts a year at most, and is no good when it is made up", async () => {
    const expiresAt = new Date(clock.now().getTime() + 400 * DAY_MS).toISOString();
    await owner.agent.post("/api/me/tokens").send({ name: "Ever", scope: "read", expiresAt }).expect(400);
    await by(`rf_${"x".repeat(43)}`)
      .get("/api/me")
      .expect(401);
    await by("nonsense").get("/api/clubs/north").expect(401);
  });
});
