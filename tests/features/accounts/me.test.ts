import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { KEPT_OF_PEOPLE, TOLD_ELSEWHERE } from "../../../src/features/accounts/kept-of-people.ts";
import { makePerson, PASSWORD, type TestPerson } from "../../support/people.ts";
import { runSql } from "../../support/sql.ts";
import { testApp } from "../../support/test-app.ts";
import { makeOpenNight } from "../calendar/turns.ts";

let app: Awaited<ReturnType<typeof testApp>>;
let secretary: TestPerson;

beforeAll(async () => {
  app = await testApp({ accounts: true });
  secretary = await makePerson(app);
  await makeOpenNight(
    { ...app, request: secretary.agent as unknown as typeof app.request },
    "north",
    "2099-04-10",
  );
});
afterAll(() => app.close());

const board = "/api/clubs/north/sessions/night/slots/only";

describe("one's own account", () => {
  it("takes a name and nothing else: roles and addresses are not one's own to give", async () => {
    const { agent } = await makePerson(app, { club: "north" });
    await agent.put("/api/me").send({ name: "Dee" }).expect(200);
    for (const extra of [{ roles: ["secretary"] }, { email: "x@example.org" }, { demo: true }, { id: "x" }])
      await agent
        .put("/api/me")
        .send({ name: "Dee", ...extra })
        .expect(400);
    const { body } = await agent.get("/api/me").expect(200);
    expect(body).toMatchObject({ person: { name: "Dee" }, clubs: [{ roles: ["member"] }] });
  });

  it("changes its password with the old one alone, and ends the other sign-ins", async () => {
    const person = await makePerson(app);
    const other = await app.request.post("/api/sign-in").send({ email: person.email, password: PASSWORD });
    const cookie = other.get("set-cookie")?.[0]?.split(";", 1)[0] ?? "";
    const change = { current: "wrong", password: "the crossing gates are shut" };
    await person.agent.post("/api/me/password").send(change).expect(400);
    await app.request.get("/api/me").set("cookie", cookie).expect(200);
    await person.agent
      .post("/api/me/password")
      .send({ ...change, current: PASSWORD })
      .expect(204);
    await app.request.get("/api/me").set("cookie", cookie).expect(401);
    await person.agent.get("/api/me").expect(200);
  });

  it("is exported with all that names one, and no secrets", async () => {
    const person = await makePerson(app, { club: "north" });
    await person.agent
      .post(`/api/clubs/north/sessions/night/booking/coming`)
      .send({ coming: true })
      .expect(200);
    const { body, text } = await person.agent.get("/api/me/export").expect(200);
    expect(body.person.email).toBe(person.email);
    expect(body.clubs[0].kept.booking_attendees).toHaveLength(1);
    expect(body.other.trail.length).toBeGreaterThan(0);
    expect(text).not.toMatch(/argon2|hash/i);
  });
});

describe("an account that is erased", () => {
  it("leaves the deeds and nobody's name", async () => {
    const person = await makePerson(app, { club: "north" });
    await person.agent
      .post(`/api/clubs/north/sessions/night/booking/coming`)
      .send({ coming: true })
      .expect(200);
    await person.agent.post("/api/me/erase").send({ password: "wrong" }).expect(400);
    await person.agent.post("/api/me/erase").send({ password: PASSWORD }).expect(204);
    await person.agent.get("/api/me").expect(401);
    const { body } = await secretary.agent.get(`/api/clubs/north/members/${person.member}`).expect(200);
    expect(body.name).toBe("Former member");
    const trail = await secretary.agent.get("/api/clubs/north/trail?limit=200").expect(200);
    expect(trail.text).not.toContain(person.id);
    expect(trail.text).not.toContain(person.name);
    const signIn = { email: person.email, password: PASSWORD };
    expect((await app.request.post("/api/sign-in").send(signIn)).status).not.toBe(204);
  });

  it("is not while others reckon with what one has in a night to come", async () => {
    const person = await makePerson(app, { club: "north" });
    await secretary.agent
      .post(`${board}/duties`)
      .send({ code: "yard", kind: "yard", name: "The yard" })
      .expect(201);
    const { body: claim } = await person.agent.post(`${board}/claims`).send({ duty: "yard" }).expect(201);
    const { body } = await person.agent.post("/api/me/erase").send({ password: PASSWORD }).expect(409);
    expect(body.detail).toContain("give back");
    await person.agent.delete(`${board}/claims/${claim.id}`).expect(200);
    await person.agent.post("/api/me/erase").send({ password: PASSWORD }).expect(204);
  });

  it("is not where the club would be left without a secretary", async () => {
    await secretary.agent.post("/api/me/erase").send({ password: PASSWORD }).expect(409);
    await secretary.agent.get("/api/me").expect(200);
  });
});

it("every table that names a member or a person is known to the export", async () => {
  const { rows } = await runSql<{ table: string; column: string }>(
    app.connection,
    `select c.table_name as table, c.column_name as column
     from information_schema.columns c join information_schema.tables t using (table_schema, table_name)
     where c.table_schema = 'public' and t.table_type = 'BASE TABLE' and c.column_name in ('member_code', 'person_id')`,
  );
  expect(rows.length).toBeGreaterThan(8);
  const known = new Set(KEPT_OF_PEOPLE.map(({ table, column }) => `${table}.${column}`));
  const unknown = rows.filter(
    ({ table, column }) =>
      !known.has(`${table}.${column}`) &&
      !TOLD_ELSEWHERE.has(table) &&
      !TOLD_ELSEWHERE.has(`${table}.${column}`),
  );
  expect(unknown).toEqual([]);
});
