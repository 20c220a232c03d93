import type { Response } from "supertest";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { testApp } from "../../support/test-app.ts";
import { makeClub } from "../example-club.ts";
import { EXAMPLES } from "./every-kind.ts";

// Conditional requests: RFC 9110 sections 13.1.1 and 13.1.2, status codes 15.3.2 and 15.4.5; 428: RFC 6585 section 3.

let app: Awaited<ReturnType<typeof testApp>>;
let club: string;

beforeAll(async () => {
  app = await testApp();
  club = await makeClub(app, "north");
  await makeClub(app, "south", null);
});
afterAll(() => app.close());

describe.each(EXAMPLES)("$path", ({ path, codes, fresh, change, filters }) => {
  const url = () => `${club}/${path}`;
  const one = () => `${url()}/${fresh.code}`;

  it("lists what the club has, in order, also page by page", async () => {
    const all = await app.request.get(url()).expect(200);
    expect(all.body.items.map(({ code }: { code: string }) => code)).toEqual(codes);
    expect(all.body.next).toBeNull();
    const paged: unknown[] = [];
    for (let next: string | null = ""; next !== null; ) {
      const page: Response = await app.request
        .get(`${url()}?limit=1${next && `&cursor=${next}`}`)
        .expect(200);
      expect(page.body.items.length).toBe(1);
      paged.push(...page.body.items);
      next = page.body.next;
    }
    expect(paged).toEqual(all.body.items);
  });

  it.each(Object.entries(filters))("filtered by %s it lists %s", async (query, left) => {
    const { body } = await app.request.get(`${url()}?${query}`).expect(200);
    expect(body.items.map(({ code }: { code: string }) => code)).toEqual(left);
  });

  it("takes a new record, gives it back, changes and removes it", async () => {
    const made = await app.request.post(url()).send(fresh).expect(201);
    expect(made.headers.location).toBe(one());
    expect(made.headers.etag).toBe('"1"');
    expect(made.body).toMatchObject({ code: fresh.code, version: 1 });

    const read = await app.request.get(one()).expect(200);
    expect(read.body).toEqual(made.body);
    await app.request.get(one()).set("if-none-match", '"1"').expect(304, "");
    await app.request.get(one()).set("if-none-match", '"2"').expect(200);

    const { version, updatedAt, ...body } = read.body;
    await app.request.put(one()).send(body).expect(428);
    await app.request.put(one()).set("if-match", '"2"').send(body).expect(412);
    const changed = await app.request
      .put(one())
      .set("if-match", '"1"')
      .send({ ...body, ...change });
    expect(changed.body).toMatchObject({ ...change, version: 2 });
    expect(changed.headers.etag).toBe('"2"');
    expect(Date.parse(changed.body.updatedAt)).toBeGreaterThanOrEqual(Date.parse(updatedAt));
    expect((await app.request.get(one())).body).toEqual(changed.body);

    await app.request.delete(one()).expect(428);
    await app.request.delete(one()).set("if-match", '"1"').expect(412);
    await app.request.delete(one()).set("if-match", '"2"').expect(204, "");
    await app.request.get(one()).expect(404);
    await app.request.delete(one()).set("if-match", "*").expect(404);
    expect(version).toBe(1);
  });

  it("refuses a second record with the same code, and a change to a code that is taken", async () => {
    const [taken] = codes;
    const again = await app.request.post(url()).send({ ...fresh, code: taken });
    expect([again.status, again.body.code]).toEqual([409, "duplicate-code"]);
    expect(again.body.errors[0].pointer).toBe("/body/code");
    await app.request.post(url()).send(fresh).expect(201);
    const renamed = await app.request
      .put(one())
      .set("if-match", '"1"')
      .send({ ...fresh, code: taken });
    expect([renamed.status, renamed.body.code]).toEqual([409, "duplicate-code"]);
    await app.request.delete(one()).set("if-match", '"1"').expect(204);
  });

  it("refuses a field it does not know", async () => {
    const response = await app.request.post(url()).send({ ...fresh, colour: "red" });
    expect(response.status).toBe(400);
    expect(response.body.errors).toEqual([
      { pointer: "/body/colour", detail: "Is not a field here: check its spelling, or leave it out." },
    ]);
  });

  it("refuses text that no database can keep", async () => {
    const response = await app.request.post(url()).send({ ...fresh, note: "a\0b" });
    expect([response.status, response.body.errors[0].pointer]).toEqual([400, "/body/note"]);
  });

  it("another club's record is answered exactly as one that is nowhere", async () => {
    const [known = ""] = codes;
    const elsewhere = `/api/clubs/south/${path}`;
    for (const method of ["get", "delete", "put"] as const) {
      const ask = (code: string) =>
        app.request[method](`${elsewhere}/${code}`)
          .set("if-match", "*")
          .send(method === "put" ? { ...fresh, code } : undefined);
      const [of, nowhere] = [await ask(known), await ask("nowhere")];
      expect(of.status).toBe(404);
      expect(JSON.stringify(of.body).replaceAll(known, "nowhere")).toBe(JSON.stringify(nowhere.body));
    }
    if (!path.includes("/")) {
      const list = await app.request.get(elsewhere).expect(200);
      expect(list.body.items).toEqual([]);
    }
  });
});

describe("clubs", () => {
  it("are made, read, listed, changed and removed like the rest", async () => {
    const body = { code: "côte", name: "Coast", timeZone: "America/Nuuk", scale: 160 };
    const made = await app.request.post("/api/clubs").send(body).expect(201);
    expect(made.headers.location).toBe("/api/clubs/c%C3%B4te");
    expect(made.body.policy.reserve).toBe(0.2);
    const url = made.headers.location ?? "";
    const changed = await app.request
      .put(url)
      .set("if-match", '"1"')
      .send({ ...body, policy: { reserve: 0.125 } });
    expect(changed.body).toMatchObject({ version: 2, policy: { reserve: 0.125, setUpSeconds: 5 } });
    const { body: list } = await app.request.get("/api/clubs?q=coast").expect(200);
    expect(list.items.map(({ code }: { code: string }) => code)).toEqual(["côte"]);
    await app.request.delete(url).set("if-match", '"2"').expect(204);
  });

  it("are not removed while they hold records, and say which", async () => {
    const response = await app.request.delete(club).set("if-match", "*");
    expect([response.status, response.body.code]).toEqual([409, "in-use"]);
    expect(response.body.detail).toContain("its sections (7)");
  });

  it("refuse a time zone that is none", async () => {
    const response = await app.request
      .post("/api/clubs")
      .send({ code: "x", name: "X", timeZone: "Europe/Nowhere", scale: 87 });
    expect([response.status, response.body.errors[0].pointer]).toEqual([422, "/body/timeZone"]);
  });

  it("that are nowhere have no collections", async () => {
    await app.request.get("/api/clubs/nowhere/sections").expect(404);
    await app.request.post("/api/clubs/nowhere/areas").send({ code: "a", name: "A" }).expect(404);
  });
});

describe("a list", () => {
  it.each(["limit=0", "limit=201", "colour=red", "cursor=nonsense", "q=%00", "address=x"])(
    "refuses the query %s",
    async (query) => {
      const response = await app.request.get(`${club}/decoders?${query}`);
      expect(response.status).toBe(400);
      expect(response.body.errors[0].pointer).toBe(`/query/${query.split("=")[0]}`);
    },
  );
});
