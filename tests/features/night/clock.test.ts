import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { appOn } from "../../support/test-app.ts";
import { MINUTE, type NightApp, nightApp, setBooking } from "./run-night.ts";

let app: NightApp;

beforeAll(async () => {
  app = await nightApp("locked");
});
afterAll(() => app.close());

const clock = async () => (await app.read()).clock;

describe("the layout clock of a night", () => {
  it("shows the start of its first slot before it is started, and cannot be paused then", async () => {
    expect(await clock()).toMatchObject({
      slot: "first",
      state: "not started",
      layout: "10:00",
      layoutSeconds: 36_000,
      clockRatio: 4,
      since: null,
      version: 1,
      changes: [],
    });
    const paused = await app.post("clock", { run: "pause" });
    expect([paused.status, paused.body.code]).toEqual([409, "already-done"]);
    expect(await app.read()).toMatchObject({ booking: "locked" });
  });

  it("makes a locked night a running one when it is started", async () => {
    const { body, headers } = await app.post("clock", { run: "start" }).expect(200);
    expect(body).toMatchObject({ state: "running", layout: "10:00", since: "2027-03-20T19:00:00.000Z" });
    expect(headers.etag).toBe('"2"');
    expect((await app.read()).booking).toBe("running");
  });

  it("runs by its ratio, and stands in a pause", async () => {
    app.clock.pass(10 * MINUTE);
    // ratio 4: an hour of layout time takes 15 real minutes; common practice, the figures are calculated
    expect(await clock()).toMatchObject({
      layout: "10:40",
      state: "running",
      at: "2027-03-20T19:10:00.000Z",
    });
    await app.post("clock", { run: "pause" }).expect(200);
    app.clock.pass(20 * MINUTE);
    expect(await clock()).toMatchObject({
      layout: "10:40",
      state: "paused",
      since: "2027-03-20T19:10:00.000Z",
    });
    await app.post("clock", { run: "start" }).expect(200);
    app.clock.pass(2.5 * MINUTE);
    expect(await clock()).toMatchObject({ layout: "10:50", layoutSeconds: 39_000 });
  });

  it("says so when it runs, or stands, already", async () => {
    const again = await app.post("clock", { run: "start" });
    expect([again.status, again.body.code]).toEqual([409, "already-done"]);
  });

  it("is corrected to a stated time, with a note that says why", async () => {
    await app.post("clock", { run: "set", layout: "10:45" }).expect(400);
    await app.post("clock", { run: "set", note: "Why not" }).expect(400);
    await app.post("clock", { run: "pause", layout: "10:45" }).expect(400);
    await app.post("clock", { run: "set", layout: "10:45", note: "Nobody had pressed pause" }).expect(200);
    app.clock.pass(MINUTE);
    const { clock: now, incidents } = await app.read();
    expect(now).toMatchObject({ layout: "10:49", state: "running" });
    expect(now.changes.at(-1)).toMatchObject({
      run: "set",
      layout: "10:45",
      note: "Nobody had pressed pause",
    });
    expect(incidents[0]).toMatchObject({ kind: "clock", sentence: "The clock was set to 10:45." });
  });

  it("is changed only as it was read, where that is asked", async () => {
    const { version } = await clock();
    const late = await app.post("clock", { run: "pause" }).set("if-match", `"${version - 1}"`);
    expect([late.status, late.body.code]).toEqual([412, "version-mismatch"]);
    await app.post("clock", { run: "pause" }).set("if-match", `"${version}"`).expect(200);
    await app.post("clock", { run: "start" }).expect(200);
  });

  it("is pressed once by a finger that presses twice", async () => {
    const press = () => app.post("clock", { run: "pause" }).set("idempotency-key", "press-0001");
    const answers = await Promise.all([press(), press(), press()]);
    expect(answers.map(({ status }) => status)).toEqual([200, 200, 200]);
    expect(answers[1]?.body).toEqual(answers[0]?.body);
    const other = await app.post("clock", { run: "start" }).set("idempotency-key", "press-0001");
    expect([other.status, other.body.code]).toEqual([422, "idempotency-key-reused"]);
  });

  it("is started by one of many marshals who press at once", async () => {
    const { version } = await clock();
    const answers = await Promise.all(Array.from({ length: 8 }, () => app.post("clock", { run: "start" })));
    expect(answers.map(({ status }) => status).toSorted()).toEqual([200, 409, 409, 409, 409, 409, 409, 409]);
    expect((await clock()).version).toBe(version + 1);
  });

  it("shows the same after a restart in the middle", async () => {
    const before = await app.read();
    const second = await appOn(app.connection, { clock: app.clock });
    const { body } = await second.request.get(app.night).expect(200);
    await second.close();
    expect(before.clock.state).toBe("running");
    expect(body).toEqual(before);
  });

  it("is paused by one of many marshals on two servers, and handsets go out once", async () => {
    const second = await appOn(app.connection, { clock: app.clock });
    const both = [app.request, second.request];
    const from = (path: string, body: object) =>
      both.map((request) => request.post(`${app.night}/${path}`).send(body));
    const pauses = await Promise.all([
      ...from("clock", { run: "pause" }),
      ...from("clock", { run: "pause" }),
    ]);
    const hands = await Promise.all(
      ["ada", "bo"].flatMap((member) => from("handset-desk", { handset: "H1", to: "out", member })),
    );
    await second.close();
    expect(pauses.map(({ status }) => status).toSorted()).toEqual([200, 409, 409, 409]);
    expect(hands.map(({ status }) => status).toSorted()).toEqual([200, 409, 409, 409]);
    await app.post("clock", { run: "start" }).expect(200);
  });

  it("of another slot starts at that slot's first reading, and pauses the one before", async () => {
    app.clock.pass(10 * MINUTE);
    const shown = (await clock()).layout;
    await app.post("clock", { run: "start", slot: "second" }).expect(200);
    app.clock.pass(MINUTE);
    expect(await clock()).toMatchObject({ slot: "second", layout: "10:04", state: "running" });
    await app.post("clock", { run: "start", slot: "first" }).expect(200);
    expect(await clock()).toMatchObject({ slot: "first", layout: shown, state: "running" });
    expect((await clock()).changes.slice(-4).map(({ slot, run }) => `${slot} ${run}`)).toEqual([
      "first pause",
      "second start",
      "second pause",
      "first start",
    ]);
    const unknown = await app.post("clock", { run: "start", slot: "third" });
    expect([unknown.status, unknown.body.errors[0].pointer]).toEqual([422, "/body/slot"]);
  });
});

describe("a night that is over", () => {
  const move = async (to: string) => {
    const { headers } = await app.request.get(`${app.url}/sessions/march/booking`).expect(200);
    return app.request
      .post(`${app.url}/sessions/march/booking/moves`)
      .set("if-match", headers.etag ?? "")
      .send({ to })
      .expect(200);
  };

  it("has a clock that stands from then on, also when the night is taken up again", async () => {
    const running = await clock();
    expect(running.state).toBe("running");
    app.clock.pass(MINUTE);
    const { layout } = await clock();
    await move("finished");
    app.clock.pass(5 * MINUTE);
    expect(await clock()).toMatchObject({ state: "paused", layout, version: running.version + 1 });
    await move("running");
    expect(await clock()).toMatchObject({ state: "paused", layout });
    await app.post("clock", { run: "start" }).expect(200);
    await app.post("clock", { run: "pause" }).expect(200);
    await move("locked");
    expect((await clock()).version).toBe(running.version + 3);
  });

  it("refuses a note that is no text", async () => {
    const { status, body } = await app.post("clock", { run: "start", note: "a\u0000b" });
    expect([status, body.errors[0].pointer]).toEqual([400, "/body/note"]);
  });
});

describe("a night that is not to be run", () => {
  it.each(["draft", "open", "finished", "cancelled"] as const)("as %s keeps its clock", async (state) => {
    await setBooking(app, app.session, state);
    const before = (await clock()).changes.length;
    for (const run of ["start", "pause"]) {
      const { status, body } = await app.post("clock", { run });
      expect([status, body.code]).toEqual([409, "night-not-running"]);
    }
    expect((await clock()).changes.length).toBe(before);
  });
});
