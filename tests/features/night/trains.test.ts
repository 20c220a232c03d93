import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { MINUTE, type NightApp, nightApp, setBooking } from "./run-night.ts";

let app: NightApp;

beforeAll(async () => {
  app = await nightApp("locked");
});
afterAll(() => app.close());

describe("the trains of a night", () => {
  it("are those that depart in a slot, with road, times and what they run with", async () => {
    const { trains, next } = await app.read();
    expect(trains.map(({ slot, train }) => `${slot} ${train}`)).toEqual(
      ["first", "second"].flatMap((slot) => [101, 102, 103, 104].map((train) => `${slot} ${train}`)),
    );
    expect(trains[0]).toMatchObject({
      name: "Working 101",
      from: {
        place: "west",
        placeName: "West yard",
        road: "W1",
        roadName: "Section W1",
        layout: "10:00",
        expectedLayout: "10:00",
      },
      to: { place: "east", road: "E1", layout: "10:10", expectedLayout: "10:10" },
      locomotives: [
        {
          code: "E7",
          name: "Locomotive E7",
          address: { kind: "long", number: 4_711 },
          replaces: null,
          failed: false,
        },
      ],
      driver: null,
      handset: null,
      state: "waiting",
      lateMinutes: 0,
      statedLateMinutes: null,
      departedAt: null,
      version: 1,
    });
    expect(next.map(({ train }) => train)).toEqual(["101", "102", "103", "104"]);
  });

  it("have the driver and the handset of their claim", async () => {
    const { id: sessionId, clubId } = app.session;
    const claimed = await app.prisma.train.findFirstOrThrow({ where: { clubId, code: "101" } });
    const at = (minutes: number) => new Date(app.clock.now().getTime() + minutes * MINUTE);
    await app.prisma.claim.create({
      data: {
        clubId,
        sessionId,
        slotCode: "first",
        trainId: claimed.id,
        memberCode: "ada",
        handsetCode: "H1",
        fromAt: at(0),
        untilAt: at(3),
      },
    });
    expect(await app.train("101")).toMatchObject({
      driver: { member: "ada", name: "Ada Fenwright" },
      handset: "H1",
    });
    expect((await app.train("101", "second")).driver).toBeNull();
    expect((await app.read()).attendance).toMatchObject([{ member: "ada", expected: true, here: false }]);
  });

  it("are reported only while the night runs", async () => {
    const url = `${app.night}/trains/first/101`;
    const early = await app.request.put(url).set("if-match", "*").send({ state: "running" });
    expect([early.status, early.body.code]).toEqual([409, "night-not-running"]);
    await app.post("clock", { run: "start" }).expect(200);
  });

  it("are late by the clock until they depart, and keep it until they arrive", async () => {
    app.clock.pass(1.5 * MINUTE);
    expect(await app.train("101")).toMatchObject({
      state: "waiting",
      lateMinutes: 6,
      from: { expectedLayout: "10:06" },
      to: { expectedLayout: "10:16" },
    });
    const { body, headers } = await app.report("101", { state: "running" });
    expect(body).toMatchObject({
      state: "running",
      departedAt: "2027-03-20T19:01:30.000Z",
      departedLayout: "10:06",
      lateMinutes: 6,
      version: 2,
    });
    expect(headers.etag).toBe('"2"');
    app.clock.pass(2 * MINUTE);
    expect((await app.train("101")).lateMinutes).toBe(6);
    app.clock.pass(MINUTE);
    const arrived = await app.report("101", { state: "arrived" });
    expect(arrived.body).toMatchObject({
      state: "arrived",
      departedAt: "2027-03-20T19:01:30.000Z",
      arrivedAt: "2027-03-20T19:04:30.000Z",
      arrivedLayout: "10:18",
      lateMinutes: 8,
    });
    app.clock.pass(5 * MINUTE);
    expect((await app.train("101")).lateMinutes).toBe(8);
  });

  it("are as late as somebody says, and then come later among the next departures", async () => {
    expect((await app.read()).next.map(({ train }) => train)).toEqual(["102", "103", "104"]);
    const said = await app.report("103", { state: "waiting", lateMinutes: 75, note: "Waits for its crew" });
    expect(said.body).toMatchObject({
      lateMinutes: 75,
      statedLateMinutes: 75,
      from: { layout: "11:00", expectedLayout: "12:15" },
      note: "Waits for its crew",
    });
    expect((await app.read()).next.map(({ train }) => train)).toEqual(["102", "104", "103"]);
    await app.report("103", { state: "waiting" });
  });

  it("are not run when they are left out, and wait again when that is taken back", async () => {
    await app.report("104", { state: "left out" });
    expect((await app.read()).next.map(({ train }) => train)).toEqual(["102", "103"]);
    await app.report("104", { state: "waiting" });
    await app.report("102", { state: "running" });
    const undone = await app.report("102", { state: "waiting" });
    expect(undone.body).toMatchObject({ departedAt: null, departedLayout: null });
  });

  it("are told of one marshal's report by another's", async () => {
    const url = `${app.night}/trains/first/102`;
    const { version } = await app.train("102");
    const send = (state: string) => app.request.put(url).set("if-match", `"${version}"`).send({ state });
    const answers = await Promise.all([send("running"), send("left out"), send("arrived"), send("running")]);
    expect(answers.map(({ status }) => status).toSorted()).toEqual([200, 412, 412, 412]);
    expect((await app.request.put(url).send({ state: "running" })).status).toBe(428);
    const other = await app.request
      .put(`${app.night}/trains/first/999`)
      .set("if-match", "*")
      .send({ state: "running" });
    expect([other.status, other.body.code]).toEqual([404, "not-found"]);
    await app.request
      .put(url.replace("first", "third"))
      .set("if-match", "*")
      .send({ state: "running" })
      .expect(404);
  });

  it("are looked at when the night is over, and no more reported", async () => {
    await setBooking(app, app.session, "finished");
    const url = `${app.night}/trains/first/101`;
    expect((await app.request.put(url).set("if-match", "*").send({ state: "waiting" })).status).toBe(409);
    expect((await app.train("101")).state).toBe("arrived");
  });
});
