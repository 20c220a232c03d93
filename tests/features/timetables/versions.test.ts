import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { testApp } from "../../support/test-app.ts";
import { makeClub } from "../example-club.ts";

let app: Awaited<ReturnType<typeof testApp>>;
let url: string;

beforeAll(async () => {
  app = await testApp();
  url = `${await makeClub(app, "north")}/timetables/winter/versions`;
});
afterAll(() => app.close());

const trainsOf = async (number: number) => {
  const { body } = await app.request.get(`${url}/${number}/trains`).expect(200);
  return body.items.map(({ version: _, updatedAt: __, ...train }: Record<string, unknown>) => train);
};

describe("the versions of a timetable", () => {
  it("are listed in the order of their numbers, also page by page", async () => {
    const { body } = await app.request.get(`${url}?limit=1`).expect(200);
    expect(body.items).toMatchObject([{ number: 1, state: "issued", note: "As printed" }]);
    const rest = await app.request.get(`${url}?cursor=${body.next}`).expect(200);
    expect(rest.body.items.map(({ number }: { number: number }) => number)).toEqual([2]);
    expect(rest.body.next).toBeNull();
  });

  it("start with copies of the last one's trains, of a named one's, or of none", async () => {
    const made = await app.request.post(url).send({ note: "From the last" }).expect(201);
    expect(made.headers.location).toBe(`${url}/3`);
    expect(made.body).toMatchObject({ number: 3, state: "draft", note: "From the last", version: 1 });
    expect(await trainsOf(3)).toEqual(await trainsOf(2));
    await app.request.post(url).send({ from: 1 }).expect(201);
    expect(await trainsOf(4)).toEqual(await trainsOf(1));
    await app.request.post(url).send({ from: null }).expect(201);
    expect(await trainsOf(5)).toEqual([]);
    const missing = await app.request.post(url).send({ from: 9 });
    expect([missing.status, missing.body.errors[0].pointer]).toEqual([422, "/body/from"]);
  });

  it("are read, changed and removed, each from its current state only", async () => {
    const one = `${url}/5`;
    await app.request.get(one).set("if-none-match", '"1"').expect(304);
    await app.request.put(one).send({ number: 5 }).expect(428);
    const changed = await app.request.put(one).set("if-match", '"1"').send({ number: 6, note: "Moved" });
    expect([changed.status, changed.headers.etag]).toEqual([200, '"2"']);
    await app.request.get(one).expect(404);
    await app.request.put(`${url}/6`).set("if-match", '"1"').send({ number: 6 }).expect(412);
    const taken = await app.request.put(`${url}/6`).set("if-match", "*").send({ number: 4 });
    expect([taken.status, taken.body.code]).toEqual([409, "duplicate-code"]);
    await app.request.delete(`${url}/6`).set("if-match", '"1"').expect(412);
    await app.request.delete(`${url}/6`).set("if-match", '"2"').expect(204);
    await app.request.get(`${url}/6`).expect(404);
  });

  it("take their trains with them", async () => {
    expect(await trainsOf(4)).not.toEqual([]);
    await app.request.delete(`${url}/4`).set("if-match", "*").expect(204);
    await app.request.get(`${url}/4/trains`).expect(404);
  });

  it("of a timetable that is not there are not there either", async () => {
    const elsewhere = url.replace("winter", "summer");
    for (const path of ["", "/1", "/1/trains", "/1/trains/101"])
      await app.request.get(elsewhere + path).expect(404);
    await app.request.post(elsewhere).send({}).expect(404);
    await app.request.get(`${url}/0`).expect(400);
    await app.request.get(`${url}/one`).expect(400);
  });
});

describe("an issued version", () => {
  it("refuses every change of its trains", async () => {
    const [train] = await trainsOf(1);
    const answers = [
      await app.request.post(`${url}/1/trains`).send({ ...train, code: "199" }),
      await app.request
        .put(`${url}/1/trains/101`)
        .set("if-match", "*")
        .send({ ...train, name: "Changed" }),
      await app.request.delete(`${url}/1/trains/101`).set("if-match", "*"),
    ];
    for (const { status, body } of answers) expect([status, body.code]).toEqual([409, "version-issued"]);
    expect(await trainsOf(1)).toEqual([train]);
  });

  it("is never a draft again and keeps its number, but its note may change", async () => {
    for (const body of [{ number: 1 }, { number: 7, state: "issued" }]) {
      const answer = await app.request.put(`${url}/1`).set("if-match", "*").send(body);
      expect([answer.status, answer.body.code]).toEqual([409, "version-issued"]);
    }
    const noted = await app.request
      .put(`${url}/1`)
      .set("if-match", "*")
      .send({ number: 1, state: "issued", note: "Out of print" });
    expect([noted.status, noted.body.note]).toEqual([200, "Out of print"]);
  });

  it("is copied into a draft that can be changed, and issued in its turn", async () => {
    const { body: draft } = await app.request.post(url).send({ from: 1 }).expect(201);
    const version = `${url}/${draft.number}`;
    await app.request.delete(`${version}/trains/101`).set("if-match", "*").expect(204);
    await app.request
      .put(version)
      .set("if-match", "*")
      .send({ number: draft.number, state: "issued" })
      .expect(200);
    const [train] = await trainsOf(1);
    const again = await app.request.post(`${version}/trains`).send(train);
    expect([again.status, again.body.code]).toEqual([409, "version-issued"]);
  });

  it("that no session uses may be removed whole", async () => {
    await app.request.delete(`${url}/1`).set("if-match", "*").expect(204);
    await app.request.get(`${url}/1`).expect(404);
  });
});
