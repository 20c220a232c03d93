import type supertest from "supertest";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { hashSecret } from "../../../src/lib/secret.ts";
import { makePerson, PASSWORD } from "../../support/people.ts";
import { testApp } from "../../support/test-app.ts";
import { heldClock } from "./held-clock.ts";

const DAY_MS = 86_400_000;
const clock = heldClock("2026-11-25T18:00:00Z");
let app: Awaited<ReturnType<typeof testApp>>;

beforeAll(async () => {
  app = await testApp({ accounts: true, clock });
});
afterAll(() => app.close());

const signIn = (email: string, password: string, headers: Record<string, string> = {}) =>
  app.request.post("/api/sign-in").set(headers).send({ email, password });

/** The cookie as a browser would send it back. */
function cookieOf(response: supertest.Response): string {
  const [header = ""] = response.get("set-cookie") ?? [];
  return header.split(";", 1)[0] ?? "";
}

const me = (cookie: string) => app.request.get("/api/me").set("cookie", cookie);

describe("signing in", () => {
  it("gives a cookie for this host alone, which scripts cannot read", async () => {
    const { email } = await makePerson(app, { now: clock.now() });
    const response = await signIn(email, PASSWORD);
    expect(response.status).toBe(204);
    const [header] = response.get("set-cookie") ?? [];
    // OWASP ASVS 5.0, 3.3: __Host- prefix, Secure, HttpOnly, SameSite
    expect(header).toMatch(
      /^__Host-foreman=[\w-]{43}; Path=\/; Expires=[^;]+; HttpOnly; Secure; SameSite=Lax$/,
    );
    const answer = await me(cookieOf(response));
    expect(answer.body.person.email).toBe(email);
  });

  it("takes an address in any capitals", async () => {
    const { email } = await makePerson(app, { email: "ada@example.org", now: clock.now() });
    expect((await signIn(` ${email.toUpperCase()} `, PASSWORD)).status).toBe(204);
  });

  it("keeps nothing that could be sent as the cookie", async () => {
    const { email, id } = await makePerson(app, { now: clock.now() });
    const token = cookieOf(await signIn(email, PASSWORD)).split("=")[1] ?? "";
    const kept = JSON.stringify(await app.prisma.signIn.findMany({ where: { personId: id } }));
    expect(kept).not.toContain(token);
    expect(kept).toContain(hashSecret(token));
  });

  it("never takes on a cookie that was there before, and ends it", async () => {
    const { email, cookie } = await makePerson(app, { now: clock.now() });
    const fixed = `__Host-foreman=${"A".repeat(43)}`;
    const first = cookieOf(await signIn(email, PASSWORD, { cookie: fixed }));
    expect(first).not.toBe(fixed);
    expect((await me(fixed)).status).toBe(401);
    const second = cookieOf(await signIn(email, PASSWORD, { cookie: first }));
    expect((await me(first)).status).toBe(401);
    expect((await me(second)).status).toBe(200);
    expect((await me(cookie)).status).toBe(200);
  });

  it("works with a cookie that is no good any more", async () => {
    const { email } = await makePerson(app, { now: clock.now() });
    expect((await signIn(email, PASSWORD, { cookie: "__Host-foreman=gone" })).status).toBe(204);
  });

  it("answers the same whether the address or the password was wrong, after the same work", async () => {
    const { email } = await makePerson(app, { now: clock.now() });
    const wrong = await signIn(email, "not the password");
    const nobody = await signIn("nobody@example.org", "not the password");
    expect(wrong.status).toBe(401);
    expect(nobody.status).toBe(401);
    expect(nobody.body).toEqual(wrong.body);
    expect(Object.keys(nobody.headers).toSorted()).toEqual(Object.keys(wrong.headers).toSorted());
    expect(wrong.body.code).toBe("wrong-sign-in");
  });

  it.each([
    ["no password", { email: "a@example.org" }],
    ["more than asked for", { email: "a@example.org", password: "x", roles: ["secretary"] }],
    ["an object for a password", { email: "a@example.org", password: { $ne: "" } }],
    ["a list for an address", { email: ["a@example.org"], password: "x" }],
    ["an address that is none", { email: "a' or 1=1 --", password: "x" }],
    ["a password of a megabyte", { email: "a@example.org", password: "x".repeat(1_000_000) }],
  ])("refuses %s at once", async (_, body) => {
    const response = await app.request.post("/api/sign-in").send(body);
    expect(response.status).toBe(400);
    expect(response.body.code).toBe("validation-failed");
  });

  it("refuses a body too large, and one that is no JSON", async () => {
    const large = await app.request
      .post("/api/sign-in")
      .send({ email: "x".repeat(9_000_000), password: "x" });
    expect(large.status).toBe(413);
    const broken = await app.request.post("/api/sign-in").type("json").send("{ not json");
    expect(broken.body.code).toBe("malformed-json");
  });
});

describe("a sign-in", () => {
  it("ends on the service when one signs out, not only in the browser", async () => {
    const { cookie } = await makePerson(app, { now: clock.now() });
    const response = await app.request.post("/api/sign-out").set("cookie", cookie);
    expect(response.status).toBe(204);
    expect(response.get("set-cookie")?.[0]).toMatch(/^__Host-foreman=; .*Expires=Thu, 01 Jan 1970/);
    expect((await me(cookie)).status).toBe(401);
    expect((await app.request.post("/api/sign-out").set("cookie", cookie)).status).toBe(204);
  });

  it("ends after 14 days without use, and after 30 however much it is used", async () => {
    const { email } = await makePerson(app, { now: clock.now() });
    const idle = cookieOf(await signIn(email, PASSWORD));
    const used = cookieOf(await signIn(email, PASSWORD));
    for (const _ of [1, 2]) {
      clock.pass(13 * DAY_MS);
      expect((await me(used)).status).toBe(200);
    }
    expect((await me(idle)).status).toBe(401);
    clock.pass(5 * DAY_MS);
    expect((await me(used)).status).toBe(401);
  });
});

describe("a request from a page of another site", () => {
  it.each([
    [{ "sec-fetch-site": "cross-site", origin: "https://elsewhere.example" }, 403],
    [{ "sec-fetch-site": "same-site" }, 403],
    [{ origin: "https://elsewhere.example" }, 403],
    [{ origin: "null" }, 403],
    [{ "sec-fetch-site": "same-origin" }, 204],
    [{ "sec-fetch-site": "none" }, 204],
    [{}, 204],
  ])("with %j is answered %i", async (headers, status) => {
    const { email, agent } = await makePerson(app, { now: clock.now() });
    const signedIn = await signIn(email, PASSWORD, headers as Record<string, string>);
    expect(signedIn.status).toBe(status);
    const changed = await agent.put("/api/me").set(headers).send({ name: "Another" });
    expect(changed.status).toBe(status === 204 ? 200 : 403);
    if (status === 403) expect(changed.body.code).toBe("cross-site");
  });

  it("passes when its origin is the host it asks", async () => {
    const { agent } = await makePerson(app, { now: clock.now() });
    const response = await agent
      .put("/api/me")
      .set({ host: "127.0.0.1:4380", origin: "http://127.0.0.1:4380" })
      .send({ name: "Another" });
    expect(response.status).toBe(200);
  });

  it("is told nothing that its page could read", async () => {
    const response = await app.request.get("/api/me").set("origin", "https://elsewhere.example");
    expect(response.get("access-control-allow-origin")).toBeUndefined();
  });
});
