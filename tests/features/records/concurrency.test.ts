import { afterAll, beforeAll, expect, it } from "vitest";
import { testApp } from "../../support/test-app.ts";
import { exampleDocument, makeClub } from "../example-club.ts";

let app: Awaited<ReturnType<typeof testApp>>;
let club: string;

beforeAll(async () => {
  app = await testApp();
  club = await makeClub(app, "north");
});
afterAll(() => app.close());

const statusesOf = async (requests: readonly PromiseLike<{ status: number }>[]) =>
  (await Promise.all(requests)).map(({ status }) => status).sort();

it("of two changes of the same version one is made, and the other told to read again", async () => {
  const [place] = exampleDocument.layout.places;
  const change = (name: string) =>
    app.request
      .put(`${club}/places/west`)
      .set("if-match", '"1"')
      .send({ ...place, name });
  expect(await statusesOf([change("One"), change("Other")])).toEqual([200, 412]);
  const { body } = await app.request.get(`${club}/places/west`);
  expect(body.version).toBe(2);
});

it("a change and a removal of the same version do not both happen", async () => {
  await app.request.post(`${club}/areas`).send({ code: "twice", name: "A" }).expect(201);
  const url = `${club}/areas/twice`;
  const statuses = await statusesOf([
    app.request.put(url).set("if-match", '"1"').send({ code: "twice", name: "B" }),
    app.request.delete(url).set("if-match", '"1"'),
  ]);
  expect([
    [200, 412],
    [204, 404],
    [204, 412],
  ]).toContainEqual(statuses);
});

it("of eight that make the same code one succeeds", async () => {
  const make = () => app.request.post(`${club}/members`).send({ code: "dee", name: "Dee" });
  expect(await statusesOf(Array.from({ length: 8 }, make))).toEqual([201, ...Array(7).fill(409)]);
});

it("twenty that make different codes all succeed", async () => {
  const make = (_: unknown, i: number) =>
    app.request.post(`${club}/members`).send({ code: `m${i}`, name: "M" });
  expect(await statusesOf(Array.from({ length: 20 }, make))).toEqual(Array(20).fill(201));
});

it("of eight that put a decoder into the same locomotive one succeeds", async () => {
  const make = (_: unknown, i: number) =>
    app.request
      .post(`${club}/decoders`)
      .send({ code: `d${i}`, locomotive: "T3", addressKind: "short", address: 9 });
  expect(await statusesOf(Array.from({ length: 8 }, make))).toEqual([201, ...Array(7).fill(409)]);
});

it("of eight that take the same hours one succeeds", async () => {
  const [march] = exampleDocument.sessions;
  const hours = { startsAt: "2027-05-01T19:00", endsAt: "2027-05-01T22:00" };
  const make = (_: unknown, i: number) =>
    app.request
      .post(`${club}/sessions`)
      .send({ ...march, code: `may${i}`, slots: [{ ...march?.slots[0], ...hours }] });
  expect(await statusesOf(Array.from({ length: 8 }, make))).toEqual([201, ...Array(7).fill(409)]);
});

it("a record is not removed while another one starts to refer to it", async () => {
  for (let round = 0; round < 10; round++) {
    await app.request.post(`${club}/areas`).send({ code: "torn", name: "T" }).expect(201);
    const section = { code: "torn", name: "T", area: "torn", use: "line", lengthMm: 9, wiring: "digital" };
    const [removed, made] = await Promise.all([
      app.request.delete(`${club}/areas/torn`).set("if-match", "*"),
      app.request.post(`${club}/sections`).send(section),
    ]);
    expect([
      [204, 422],
      [409, 201],
    ]).toContainEqual([removed.status, made.status]);
    await app.request.delete(`${club}/sections/torn`).set("if-match", "*");
    await app.request.delete(`${club}/areas/torn`).set("if-match", "*");
  }
});

it("no train slips into a version while it is issued", async () => {
  const url = `${club}/timetables/winter/versions`;
  const { body: draft } = await app.request.post(url).send({}).expect(201);
  const version = `${url}/${draft.number}`;
  const { body: pattern } = await app.request.get(`${version}/trains/101`).expect(200);
  const { version: _, updatedAt: __, ...train } = pattern;
  const answers = await Promise.all([
    app.request.put(version).set("if-match", '"1"').send({ number: draft.number, state: "issued" }),
    ...Array.from({ length: 6 }, (_, i) =>
      app.request.post(`${version}/trains`).send({ ...train, code: `slip${i}` }),
    ),
  ]);
  const [issued, ...made] = answers.map(({ status }) => status);
  expect(issued).toBe(200);
  const { body: trains } = await app.request.get(`${version}/trains?q=slip`);
  expect(trains.items.length).toBe(made.filter((status) => status === 201).length);
  for (const { status, body } of answers.slice(1))
    if (status !== 201) expect([status, body.code]).toEqual([409, "version-issued"]);
});
