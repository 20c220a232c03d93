import type supertest from "supertest";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { makeFirstLink } from "../../../src/features/accounts/index.ts";
import { queueingMailer } from "../../../src/mail/mailer.ts";
import { makePerson, PASSWORD, type TestPerson } from "../../support/people.ts";
import { testApp } from "../../support/test-app.ts";
import { makeClub } from "../example-club.ts";
import { heldClock } from "./held-clock.ts";

const HOUR_MS = 3_600_000;
const clock = heldClock("2026-11-25T18:00:00Z");
let app: Awaited<ReturnType<typeof testApp>>;
let secretary: TestPerson;

beforeAll(async () => {
  app = await testApp({ accounts: true, clock, mailer: queueingMailer });
});
afterAll(() => app.close());

const CHOSEN = "the signal box has a kettle";
const redeem = (token: string, body: object) => app.request.post(`/api/links/${token}`).send(body);
const tokenOf = (link: string) => new URL(link).pathname.split("/").at(-1) ?? "";
const cookieOf = (response: supertest.Response) => response.get("set-cookie")?.[0]?.split(";", 1)[0] ?? "";

async function invite(member: string, email: string) {
  const { body } = await secretary.agent
    .post(`/api/clubs/north/members/${member}/invitation`)
    .send({ email })
    .expect(201);
  return tokenOf(body.link);
}

describe("a new installation", () => {
  it("makes one first person, however many follow its link at once, and no second one", async () => {
    const token = String(await makeFirstLink(app.prisma, clock));
    const body = (at: number) => ({ name: "First", email: `first-${at}@example.org`, password: CHOSEN });
    const answers = await Promise.all([0, 1, 2, 3].map((at) => redeem(token, body(at))));
    expect(answers.map(({ status }) => status).toSorted()).toEqual([204, 404, 404, 404]);
    expect(await app.prisma.person.count()).toBe(1);
    expect(await makeFirstLink(app.prisma, clock)).toBeUndefined();
  });

  it("lets whoever makes a club be its secretary", async () => {
    const person = await makePerson(app, { now: clock.now() });
    await makeClub({ request: person.agent as unknown as typeof app.request }, "north");
    secretary = person;
    const { body } = await person.agent.get("/api/me").expect(200);
    expect(body.clubs).toMatchObject([{ code: "north", roles: expect.arrayContaining(["secretary"]) }]);
  });
});

describe("an invitation", () => {
  it("is mailed, says what it is for, and makes the account of that member, once", async () => {
    const token = await invite("ada", "Ada@Example.org");
    const mail = await app.prisma.mail.findFirstOrThrow({ where: { toAddress: "ada@example.org" } });
    expect(mail.text).toContain(token);
    const { body } = await app.request.get(`/api/links/${token}`).expect(200);
    expect(body).toMatchObject({ purpose: "invitation", club: { code: "north" }, name: "Ada Fenwright" });
    const answers = await Promise.all([0, 1, 2].map(() => redeem(token, { name: "Ada", password: CHOSEN })));
    expect(answers.filter(({ status }) => status === 204)).toHaveLength(1);
    const cookie = cookieOf(answers.find(({ status }) => status === 204) as supertest.Response);
    const me = await app.request.get("/api/me").set("cookie", cookie).expect(200);
    expect(me.body.clubs).toMatchObject([{ code: "north", member: "ada", roles: ["member"] }]);
    await app.request.get(`/api/links/${token}`).expect(404);
  });

  it("is kept so that nobody who reads the database can use it", async () => {
    const token = await invite("bo", "bo@example.org");
    expect(JSON.stringify(await app.prisma.oneTimeLink.findMany())).not.toContain(token);
  });

  it("leads nowhere once it is replaced, taken back or run out", async () => {
    const first = await invite("bo", "bo@example.org");
    const second = await invite("bo", "bo@example.org");
    await redeem(first, { name: "Bo", password: CHOSEN }).expect(404);
    await secretary.agent.delete("/api/clubs/north/members/bo/invitation").expect(204);
    await redeem(second, { name: "Bo", password: CHOSEN }).expect(404);
    const third = await invite("bo", "bo@example.org");
    clock.pass(8 * 24 * HOUR_MS);
    await redeem(third, { name: "Bo", password: CHOSEN }).expect(404);
  });

  it("to an address with an account is for whoever is signed in with it", async () => {
    const person = await makePerson(app, { now: clock.now(), email: "cy@example.org" });
    const token = await invite("bo", "cy@example.org");
    const stranger = await redeem(token, { name: "Cy", password: CHOSEN }).expect(401);
    expect(stranger.body.detail).toContain("sign in with it");
    await person.agent.post(`/api/links/${token}`).send({}).expect(204);
    const { body } = await person.agent.get("/api/me").expect(200);
    expect(body.clubs).toMatchObject([{ member: "bo" }]);
  });

  it("takes no password that is too short or that too many people have", async () => {
    await secretary.agent.post("/api/clubs/north/members").send({ code: "dee", name: "Dee" }).expect(201);
    const token = await invite("dee", "dee@example.org");
    for (const password of ["short", "password1234", "12345678"])
      expect((await redeem(token, { name: "Dee", password })).status).toBe(400);
    await redeem(token, { name: "Dee", password: CHOSEN }).expect(204);
  });
});

describe("a new password by mail", () => {
  const ask = (email: string) => app.request.post("/api/reset-requests").send({ email }).expect(202);
  const linkTo = async (email: string) => {
    const mail = await app.prisma.mail.findFirst({ where: { toAddress: email, template: "reset" } });
    return /links\/([\w-]+)/.exec(mail?.text ?? "")?.[1];
  };

  it("is asked for with the same answer whether or not there is such an account", async () => {
    const { email } = await makePerson(app, { now: clock.now() });
    const [known, unknown] = [await ask(email), await ask("nobody@example.org")];
    expect([known.status, known.text]).toEqual([unknown.status, unknown.text]);
    await expect.poll(() => linkTo(email)).toBeDefined();
    expect(await linkTo("nobody@example.org")).toBeUndefined();
  });

  it("ends every sign-in there was, and the old password", async () => {
    const person = await makePerson(app, { now: clock.now() });
    await ask(person.email);
    await expect.poll(() => linkTo(person.email)).toBeDefined();
    const token = String(await linkTo(person.email));
    await redeem(token, { password: CHOSEN }).expect(204);
    await person.agent.get("/api/me").expect(401);
    const signIn = (password: string) =>
      app.request.post("/api/sign-in").send({ email: person.email, password });
    expect((await signIn(PASSWORD)).status).not.toBe(204);
    await signIn(CHOSEN).expect(204);
    await redeem(token, { password: CHOSEN }).expect(404);
  });
});
