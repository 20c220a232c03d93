import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Candidate } from "../../../shared/night.ts";
import { MINUTE, type NightApp, nightApp } from "./run-night.ts";

let app: NightApp;

beforeAll(async () => {
  app = await nightApp("locked");
  await app.post("clock", { run: "start" }).expect(200);
});
afterAll(() => app.close());

const candidates = async (train: string, locomotive: string): Promise<Map<string, Candidate>> => {
  const url = `${app.night}/trains/first/${train}/replacements`;
  const { body } = await app.request.get(url).query({ locomotive }).expect(200);
  expect(body.locomotive).toBe(locomotive);
  return new Map(body.items.map((one: Candidate) => [one.code, one]));
};
const replace = (train: string, locomotive: string, replacement: string | null, note = "") =>
  app.post(`trains/first/${train}/replacements`, { locomotive, replacement, note });
const noteOf = async (code: string) =>
  (await app.request.get(`${app.url}/locomotives/${code}`).expect(200)).body.note;

describe("who could take the place of a locomotive", () => {
  it("is whoever is free, runs there, and is neither too slow, too long nor too hungry", async () => {
    const found = await candidates("101", "E7");
    const suits = [...found.values()].filter((one) => one.suits).map(({ code }) => code);
    // D3 has the address of the one that failed, which is taken off the track with it
    expect(suits).toEqual(["D3", "D1"]);
    const why = (code: string) => found.get(code)?.reasons;
    expect(why("D2")).toEqual(["Train 102 has it from 10:08 to 10:18."]);
    expect(why("D4")).toEqual(["D2 in train 102 answers to the same address."]);
    expect(why("T3")).toEqual(["It has no decoder, and section W1 is digital."]);
    // 6,000 mm from M1 to E1 in 60 s: 31.32 km/h, as in the design's worked example
    expect(why("S1")).toEqual(["It is too slow: it may run at 10 km/h, and the timetable asks for 31 km/h."]);
    expect(why("L1")).toEqual(["With it the train is 1900 mm long, and section M1 holds 1800 mm."]);
    expect(why("H1")?.join()).toContain("of 3.00 A");
    expect(found.get("D1")).toMatchObject({
      neededFrom: "11:00",
      warnings: ["Train 103 needs it from 11:00."],
      address: { kind: "long", number: 1_001 },
    });
    expect(found.has("E7")).toBe(false);
  });

  it("is asked of a locomotive that the train has", async () => {
    const url = `${app.night}/trains/first/101/replacements`;
    const other = await app.request.get(url).query({ locomotive: "D1" });
    expect([other.status, other.body.code]).toEqual([422, "unprocessable"]);
    await app.request.get(url).expect(400);
    await app.request.get(url.replace("101", "199")).query({ locomotive: "E7" }).expect(404);
  });
});

describe("a locomotive that failed", () => {
  it("is noted, with nothing in its place yet", async () => {
    const { body } = await replace("101", "E7", null, "Motor runs hot").expect(201);
    expect(body.locomotives).toMatchObject([{ code: "E7", failed: true, replaces: null }]);
    expect((await app.read()).incidents).toMatchObject([
      {
        kind: "failure",
        sentence: "E7 failed in train 101; nothing has taken its place yet.",
        note: "Motor runs hot",
        layout: "10:00",
        train: "101",
        locomotive: "E7",
        replacement: null,
      },
    ]);
    expect(await noteOf("E7")).toBe("2027-03-20, March night: failed in train 101: Motor runs hot");
  });

  it("is replaced by one that suits, for this night alone", async () => {
    const hungry = await replace("101", "E7", "H1");
    expect([hungry.status, hungry.body.code]).toEqual([409, "locomotive-unsuitable"]);
    expect((await replace("101", "E7", "nobody")).body.errors[0].pointer).toBe("/body/replacement");
    const { body } = await replace("101", "E7", "D3").expect(201);
    expect(body.locomotives).toMatchObject([
      { code: "D3", replaces: "E7", failed: false, address: { kind: "long", number: 4_711 } },
    ]);
    expect((await app.read()).incidents).toHaveLength(1);
    const { body: train } = await app.request.get(`${app.url}/timetables/winter/versions/1/trains/101`);
    expect(train.motivePower).toEqual([{ locomotive: "E7", position: "head" }]);
    // told once, as nothing new was said
    expect((await noteOf("E7")).match(/failed/g)).toHaveLength(1);
  });

  it("gives its place to one more when that fails too, and neither is free for others", async () => {
    const { body } = await replace("101", "D3", "D1").expect(201);
    expect(body.locomotives).toMatchObject([{ code: "D1", replaces: "E7" }]);
    const others = await candidates("102", "D2");
    expect(others.get("E7")?.reasons).toContain("It failed tonight as well.");
    expect(others.get("D3")?.reasons).toContain("It failed tonight as well.");
    expect(others.get("D1")?.reasons).toContain("Train 101 has it from 10:00 to 10:10.");
  });

  it("is in the train again when it runs after all", async () => {
    const mended = (locomotive: string) => app.post("trains/first/101/mendings", { locomotive });
    expect((await mended("D3").expect(200)).body.locomotives).toMatchObject([{ code: "D3", replaces: "E7" }]);
    expect((await mended("D3")).status).toBe(422);
  });

  it("looks only at what the train has still before it", async () => {
    await app.report("101", { state: "running" });
    const whole = await candidates("101", "D3");
    expect(whole.get("L1")?.suits).toBe(false);
    // it departs from M1 at 10:06, and no road is left that it would be too long for
    app.clock.pass(1.75 * MINUTE);
    const rest = await candidates("101", "D3");
    expect(rest.get("L1")?.reasons).not.toContain(
      "With it the train is 1900 mm long, and section M1 holds 1800 mm.",
    );
  });

  it("is no matter of a train that has arrived, or is left out", async () => {
    await app.report("101", { state: "arrived" });
    expect((await replace("101", "D3", null)).body.code).toBe("conflict");
    await app.report("104", { state: "left out" });
    expect((await replace("104", "D2", null)).body.code).toBe("conflict");
  });
});

describe("a locomotive that two trains want at once", () => {
  let race: NightApp;

  beforeAll(async () => {
    race = await nightApp("locked");
  });
  afterAll(() => race.close());

  it("goes to one of them", async () => {
    const want = (train: string, locomotive: string) =>
      race.post(`trains/first/${train}/replacements`, { locomotive, replacement: "D1" });
    const answers = await Promise.all([
      want("101", "E7"),
      want("102", "D2"),
      want("101", "E7"),
      want("102", "D2"),
    ]);
    expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409, 409, 422]);
    const { trains } = await race.read();
    const has = trains.filter(
      ({ slot, locomotives }) => slot === "first" && locomotives.some(({ code }) => code === "D1"),
    );
    // and to the third, which departs when the others are there, by the timetable
    expect(has.map(({ train }) => train)).toHaveLength(2);
  });
});

describe("a breaker that opened", () => {
  it("is noted with its district, what the meter showed, and when", async () => {
    const { body } = await app
      .post("trips", { district: "D-West", measuredMa: 2_900, note: "At the crossover" })
      .expect(201);
    expect(body).toMatchObject({
      kind: "trip",
      district: "D-West",
      measuredMa: 2_900,
      sentence: "The breaker of district D-West opened at 2.90 A.",
      at: app.clock.now().toISOString(),
      layout: "10:07",
      note: "At the crossover",
    });
    expect((await app.read()).incidents[0]).toEqual(body);
    const earlier = await app
      .post("trips", { district: "D-West", at: "2027-03-20T19:30:00+01:00" })
      .expect(201);
    expect(earlier.body).toMatchObject({
      at: "2027-03-20T18:30:00.000Z",
      layout: null,
      measuredMa: null,
      sentence: "The breaker of district D-West opened.",
    });
  });

  it("is noted once by a finger that presses twice", async () => {
    const press = () =>
      app.post("trips", { district: "D-West", measuredMa: 3_000 }).set("idempotency-key", "trip-00001");
    const [first, second] = [await press(), await press()];
    expect(second.body).toEqual(first.body);
    const { incidents } = await app.read();
    expect(incidents.filter(({ measuredMa }) => measuredMa === 3_000)).toHaveLength(1);
  });

  it("belongs to a district of the club, and has happened", async () => {
    expect((await app.post("trips", { district: "D-East" })).body.errors[0].pointer).toBe("/body/district");
    const future = await app.post("trips", { district: "D-West", at: "2027-03-21T19:30:00Z" });
    expect(future.body.errors[0].pointer).toBe("/body/at");
  });
});
