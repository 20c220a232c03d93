import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { TrailEntry } from "../../../shared/trail.ts";
import { type Actor, localActor } from "../../../src/http/actor.ts";
import { newId } from "../../../src/lib/ids.ts";
import { memberOf } from "../../support/actors.ts";
import { testApp } from "../../support/test-app.ts";
import { makeClub } from "../example-club.ts";

let app: Awaited<ReturnType<typeof testApp>>;
let actor: Actor;

beforeAll(async () => {
  app = await testApp({ authenticate: async () => actor });
  actor = localActor;
  await makeClub(app, "vale");
});
beforeEach(() => {
  actor = localActor;
});
afterAll(() => app.close());

const BASE = "/api/clubs/vale";
const trail = async (query = "") =>
  (await app.request.get(`${BASE}/trail${query}`).expect(200)).body as {
    items: TrailEntry[];
    next: string | null;
  };

async function makePerson(name: string, member?: string): Promise<string> {
  const { id } = await app.prisma.person.create({ data: { email: `${newId()}@example.org`, name } });
  if (member !== undefined) {
    const body = { code: member, name: "A member", passedFor: [], junior: false };
    await app.request.post(`${BASE}/members`).send(body).expect(201);
    const club = await app.prisma.club.findUniqueOrThrow({ where: { code: "vale" } });
    await app.prisma.membership.create({ data: { clubId: club.id, memberCode: member, personId: id } });
  }
  return id;
}

describe("the trail of a club", () => {
  it("is for those alone who may read it", async () => {
    actor = memberOf("vale", "session marshal");
    await app.request.get(`${BASE}/trail`).expect(403);
    actor = memberOf("elsewhere", "secretary");
    await app.request.get(`${BASE}/trail`).expect(404);
    actor = memberOf("vale", "secretary");
    await app.request.get(`${BASE}/trail`).expect(200);
  });

  it("says who made, changed, renamed and removed a record, and what was different", async () => {
    const ada = await makePerson("Ada Example", "adele");
    actor = { ...localActor, personId: ada };
    const places = `${BASE}/places`;
    await app.request.post(places).send({ code: "North", name: "Northgate" }).expect(201);
    await app.request
      .put(`${places}/North`)
      .set("if-match", "*")
      .send({ code: "N", name: "North" })
      .expect(200);
    await app.request.delete(`${places}/N`).set("if-match", "*").expect(204);
    const { items } = await trail(`?person=${ada}`);
    const by = { person: ada, member: "adele", name: "Ada Example" };
    const told = { by, kind: "place", session: null, slot: null, timetableVersion: null };
    const field = (name: string, from: unknown, to: unknown) => ({ field: name, from, to, withheld: false });
    expect(items).toMatchObject([
      {
        ...told,
        code: "N",
        deed: "removed",
        changes: [field("code", "N", null), field("name", "North", null), field("note", "", null)],
      },
      {
        ...told,
        code: "N",
        deed: "changed",
        changes: [field("code", "North", "N"), field("name", "Northgate", "North")],
      },
      { ...told, code: "North", deed: "made" },
    ]);
    expect(items.map(({ seq }) => seq)).toEqual(items.map(({ seq }) => seq).toSorted((a, b) => b - a));
  });

  it("shows the deeds of one whose account was erased without their name", async () => {
    const bo = await makePerson("Bo Example");
    actor = { ...localActor, personId: bo };
    await app.request.post(`${BASE}/areas`).send({ code: "of-bo", name: "Area" }).expect(201);
    await app.prisma.person.update({ where: { id: bo }, data: { erasedAt: new Date(), email: null } });
    const { items } = await trail("?kind=area&code=of-bo");
    expect(items.map(({ by, deed }) => [by, deed])).toEqual([
      [{ person: bo, member: null, name: null }, "made"],
    ]);
  });

  it("tells of a member's change without saying what is theirs", async () => {
    await makePerson("Cy Example", "cy");
    const changed = {
      code: "cy",
      name: "Cy Secretive",
      passedFor: ["yard"],
      junior: true,
      note: "in hospital",
    };
    await app.request.put(`${BASE}/members/cy`).set("if-match", "*").send(changed).expect(200);
    const { items } = await trail("?kind=member&code=cy");
    expect(items[0]?.changes).toEqual([
      { field: "junior", from: false, to: true, withheld: false },
      { field: "name", from: null, to: null, withheld: true },
      { field: "note", from: null, to: null, withheld: true },
      { field: "passedFor", from: [], to: ["yard"], withheld: false },
    ]);
    expect(JSON.stringify(items)).not.toMatch(/Secretive|hospital/);
  });

  it("is read in pages, newest first, each entry once, while others write", async () => {
    const all: TrailEntry[] = [];
    let cursor: string | null = null;
    do {
      const page = await trail(`?limit=7${cursor === null ? "" : `&cursor=${cursor}`}`);
      all.push(...page.items);
      cursor = page.next;
      if (all.length === 7)
        await app.request.post(`${BASE}/areas`).send({ code: "between", name: "x" }).expect(201);
    } while (cursor !== null);
    const seqs = all.map(({ seq }) => seq);
    expect(seqs).toEqual([...new Set(seqs)].toSorted((a, b) => b - a));
    expect(seqs).toHaveLength((await app.prisma.trailEntry.count()) - 1);
  });

  it("is filtered by kind, code, person, night and time", async () => {
    expect(new Set((await trail("?kind=section&limit=200")).items.map(({ kind }) => kind))).toEqual(
      new Set(["section"]),
    );
    const start = new Date();
    await app.request.post(`${BASE}/areas`).send({ code: "timed", name: "x" }).expect(201);
    const from = encodeURIComponent(start.toISOString());
    expect((await trail(`?from=${from}`)).items.map(({ code }) => code)).toEqual(["timed"]);
    expect((await trail(`?to=${from}&kind=area&code=timed`)).items).toEqual([]);
    expect((await trail(`?person=${newId()}`)).items).toEqual([]);
    const nights = (await trail("?kind=session&limit=1")).items;
    const [night] = nights;
    const ofNight = (await trail(`?session=${night?.code}`)).items;
    expect(ofNight.length).toBeGreaterThan(0);
    expect(new Set(ofNight.map(({ session }) => session))).toEqual(new Set([night?.code]));
  });

  it.each(["kind=ghost", "person=x", "from=yesterday", "cursor=e30", "limit=0", "who=x", "code=%00"])(
    "refuses ?%s",
    async (query) => {
      const { body } = await app.request.get(`${BASE}/trail?${query}`).expect(400);
      expect(body.code).toBe("validation-failed");
    },
  );
});
