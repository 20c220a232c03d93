import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Night } from "../../../shared/night.ts";
import { makePerson, type TestPerson } from "../../support/people.ts";
import { testApp } from "../../support/test-app.ts";
import { exampleClub } from "../example-club.ts";
import { MINUTE, nightDocument, standingClock } from "./run-night.ts";

const clock = standingClock();
const club = `/api/clubs/${exampleClub.code}`;
const session = `${club}/sessions/march`;
const night = `${session}/night`;
let app: Awaited<ReturnType<typeof testApp>>;
let secretary: TestPerson;
let marshal: TestPerson;
let ada: TestPerson;
let cy: TestPerson;

beforeAll(async () => {
  app = await testApp({ accounts: true, clock });
  const now = clock.now();
  secretary = await makePerson(app, { now });
  await secretary.agent.post("/api/clubs").send(exampleClub).expect(201);
  await secretary.agent.post(`${club}/import`).send(nightDocument).expect(200);
  marshal = await makePerson(app, { club: "north", roles: ["session marshal"], member: "mo", now });
  ada = await makePerson(app, { club: "north", member: "ada", now });
  cy = await makePerson(app, { club: "north", member: "cy", now });
});
afterAll(() => app.close());

const move = ({ agent }: TestPerson, to: string, reason?: string) =>
  agent.post(`${session}/booking/moves`).set("if-match", "*").send({ to, reason });
const read = async ({ agent }: TestPerson): Promise<Night> => (await agent.get(night).expect(200)).body;
const trainOf = (board: Night, code: string) =>
  board.trains.find(({ slot, train }) => slot === "first" && train === code);
const report = async (code: string, body: object) => {
  const version = trainOf(await read(marshal), code)?.version;
  return marshal.agent
    .put(`${night}/trains/first/${code}`)
    .set("if-match", `"${version}"`)
    .send(body)
    .expect(200);
};
const press = (path: string, body: object) => marshal.agent.post(`${night}/${path}`).send(body);

describe("a whole night, by people with accounts, over HTTP alone", () => {
  it("is booked and opened by the secretary, and by nobody else", async () => {
    expect((await move(ada, "open", "I want to")).status).toBe(403);
    await move(secretary, "open", "The siding is not looked at").expect(200);
  });

  it("is claimed by members, one a train", async () => {
    const claims = `${session}/slots/first/claims`;
    const claim = ({ agent }: TestPerson, train: string) => agent.post(claims).send({ train });
    const mine = await claim(ada, "101").expect(201);
    expect(mine.body).toMatchObject({ member: "ada", handset: expect.any(String) });
    expect((await claim(cy, "101")).body.code).toBe("taken");
    await claim(cy, "103").expect(201);
  });

  it("is locked, and then nobody claims any more", async () => {
    await move(secretary, "locked").expect(200);
    const late = await cy.agent.post(`${session}/slots/first/claims`).send({ train: "104" });
    expect(late.body.code).toBe("session-not-open");
  });

  it("is run by the marshal, and not by a member", async () => {
    expect((await ada.agent.post(`${night}/clock`).send({ run: "start" })).status).toBe(403);
    await press("attendance", { member: "ada", here: true }).expect(200);
    const handset = trainOf(await read(marshal), "101")?.handset;
    await press("handset-desk", { handset, to: "out", member: "ada" }).expect(200);
    await press("clock", { run: "start" }).expect(200);
    const board = await read(ada);
    expect(board).toMatchObject({ booking: "running", clock: { state: "running", layout: "10:00" } });
    expect(trainOf(board, "101")).toMatchObject({ driver: { member: "ada" }, handset });
  });

  it("is paused, while a locomotive that failed is replaced", async () => {
    await report("101", { state: "running" });
    clock.pass(MINUTE / 2);
    await press("clock", { run: "pause" }).expect(200);
    await press("trains/first/101/replacements", { locomotive: "E7", replacement: "D3" }).expect(201);
    clock.pass(10 * MINUTE);
    const board = await read(ada);
    expect(board.clock).toMatchObject({ state: "paused", layout: "10:02" });
    expect(trainOf(board, "101")?.locomotives).toMatchObject([{ code: "D3", replaces: "E7" }]);
    // whoever drives it reads the same in their own evening
    const evening = await ada.agent.get(`${session}/my-evening`).expect(200);
    expect(evening.body.items[0].locomotives).toMatchObject([{ code: "D3" }]);
    await press("clock", { run: "start" }).expect(200);
  });

  it("copes with a late train, and a breaker that opens", async () => {
    await report("103", { state: "waiting", lateMinutes: 5 });
    await press("trips", { district: "D-West", measuredMa: 3_200 }).expect(201);
    clock.pass(2 * MINUTE);
    await report("101", { state: "arrived" });
    const board = await read(cy);
    expect(trainOf(board, "103")).toMatchObject({ lateMinutes: 5, from: { expectedLayout: "11:05" } });
    expect(board.incidents.map(({ kind }) => kind).toSorted()).toEqual(["failure", "trip"]);
  });

  it("is finished with its clock standing and its handsets in, and the trail says who did it", async () => {
    const out = (await read(marshal)).handsets.filter(({ state }) => state === "out");
    await move(marshal, "finished").expect(200);
    for (const { code } of out) await press("handset-desk", { handset: code, to: "in" }).expect(200);
    const board = await read(ada);
    expect(board).toMatchObject({ booking: "finished", clock: { state: "paused" } });
    expect(board.handsets.filter(({ state }) => state === "out")).toEqual([]);
    expect((await press("clock", { run: "start" })).body.code).toBe("night-not-running");
    const { body } = await secretary.agent.get(`${club}/trail`).query({ kind: "replacement" }).expect(200);
    expect(JSON.stringify(body.items)).toContain(marshal.name);
  });
});
