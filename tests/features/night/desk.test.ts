import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { runSql } from "../../support/sql.ts";
import { MINUTE, type NightApp, nightApp, setBooking } from "./run-night.ts";

let app: NightApp;

beforeAll(async () => {
  app = await nightApp("locked");
});
afterAll(() => app.close());

const move = (handset: string, to: string, member?: string) =>
  app.post("handset-desk", { handset, to, ...(member && { member }) });
const handset = async (code: string) => (await app.read()).handsets.find((one) => one.code === code);
const record = async (code: string) =>
  (await app.request.get(`${app.url}/handsets/${code}`).expect(200)).body;

describe("booking on", () => {
  it("makes members who come and go be here, and not; twice is no mistake", async () => {
    expect((await app.read()).attendance).toEqual([]);
    const here = { member: "bo", name: "Bo Larkin", junior: true, expected: false, here: true };
    for (let press = 0; press < 2; press++) {
      const { body } = await app.post("attendance", { member: "bo", here: true }).expect(200);
      expect(body).toEqual({ ...here, since: "2027-03-20T19:00:00.000Z" });
      app.clock.pass(MINUTE);
    }
    const off = await app.post("attendance", { member: "bo", here: false }).expect(200);
    expect(off.body).toMatchObject({ here: false, since: "2027-03-20T19:02:00.000Z" });
    const back = await app.post("attendance", { member: "bo", here: true }).expect(200);
    expect(back.body.here).toBe(true);
    expect((await app.read()).attendance).toHaveLength(1);
    const unknown = await app.post("attendance", { member: "cy", here: true });
    expect([unknown.status, unknown.body.errors[0].pointer]).toEqual([422, "/body/member"]);
  });

  it("by many marshals at once makes one here once", async () => {
    const answers = await Promise.all(
      Array.from({ length: 6 }, () => app.post("attendance", { member: "ada", here: true })),
    );
    expect(answers.map(({ status }) => status)).toEqual(Array(6).fill(200));
    const rows = await app.prisma.nightAttendance.findMany({ where: { memberCode: "ada" } });
    expect(rows).toHaveLength(1);
  });

  it("shows who said that they come", async () => {
    const { id: sessionId, clubId } = app.session;
    await app.prisma.member.create({ data: { clubId, code: "dee", name: "Dee Moss", junior: false } });
    await app.prisma.bookingAttendee.create({ data: { clubId, sessionId, memberCode: "dee" } });
    expect((await app.read()).attendance.map(({ name, expected, here }) => [name, expected, here])).toEqual([
      ["Ada Fenwright", false, true],
      ["Bo Larkin", false, true],
      ["Dee Moss", true, false],
    ]);
  });
});

describe("the handset desk", () => {
  it("has what is ready, and knows what is faulty by its record", async () => {
    const { handsets } = await app.read();
    expect(handsets.map(({ code, state, holder }) => [code, state, holder])).toEqual([
      ["H1", "in", null],
      ["H2", "faulty", null],
      ["H3", "in", null],
    ]);
  });

  it("gives a handset into one pair of hands, and says whose when another wants it", async () => {
    const { body } = await move("H1", "out", "ada").expect(200);
    expect(body).toMatchObject({ state: "out", holder: { member: "ada", name: "Ada Fenwright" } });
    const other = await move("H1", "out", "bo");
    expect([other.status, other.body.code]).toEqual([409, "handset-out"]);
    expect(other.body.detail).toContain("Ada Fenwright has handset H1.");
    const again = await move("H1", "out", "ada");
    expect([again.status, again.body.code]).toEqual([409, "already-done"]);
    await move("H1", "out").expect(400);
    await move("H1", "in", "ada").expect(400);
    const broken = await move("H2", "out", "bo");
    expect([broken.status, broken.body.code]).toEqual([409, "handset-out"]);
    const unknown = await move("H9", "out", "bo");
    expect([unknown.status, unknown.body.errors[0].pointer]).toEqual([422, "/body/handset"]);
  });

  it("counts the battery down while it is in hands, and not on the desk", async () => {
    app.clock.pass(30 * MINUTE);
    expect(await handset("H1")).toMatchObject({ batteryMinutes: 240, batteryLeftMinutes: 210 });
    await move("H1", "in").expect(200);
    app.clock.pass(60 * MINUTE);
    expect(await handset("H1")).toMatchObject({ state: "in", holder: null, batteryLeftMinutes: 210 });
    expect((await handset("H3"))?.batteryLeftMinutes).toBeNull();
  });

  it("has nothing left of one that is flat, and all of it when it is back", async () => {
    await move("H1", "out", "bo").expect(200);
    expect((await move("H1", "flat").expect(200)).body).toMatchObject({
      state: "flat",
      holder: null,
      batteryLeftMinutes: 0,
    });
    expect((await move("H1", "out", "bo")).body.detail).toContain("Handset H1 is flat.");
    expect((await move("H1", "in").expect(200)).body).toMatchObject({ state: "in", batteryLeftMinutes: 240 });
    expect((await record("H1")).state).toBe("ready");
  });

  it("marks the record of one that is faulty, and of one that works again", async () => {
    const before = await record("H3");
    await move("H3", "faulty").expect(200);
    const marked = await record("H3");
    expect(marked).toMatchObject({ state: "faulty", version: before.version + 1 });
    expect((await move("H3", "faulty")).body.code).toBe("already-done");
    await move("H3", "in").expect(200);
    expect((await record("H3")).state).toBe("ready");
    expect((await move("H3", "in")).body.code).toBe("already-done");
    await move("H2", "in").expect(200);
    expect((await record("H2")).state).toBe("ready");
  });

  it("gives a handset to one of many who are handed it at once", async () => {
    const answers = await Promise.all(
      ["ada", "bo", "dee", "ada", "bo", "dee"].map((member) => move("H2", "out", member)),
    );
    expect(answers.filter(({ status }) => status === 200)).toHaveLength(1);
    expect(new Set(answers.map(({ status }) => status))).toEqual(new Set([200, 409]));
  });

  it("takes in what is out also when the night is over, and gives out nothing more", async () => {
    await setBooking(app, app.session, "finished");
    expect((await move("H1", "out", "ada")).body.code).toBe("night-not-running");
    await move("H2", "in").expect(200);
    await setBooking(app, app.session, "running");
  });

  it("is pressed once by a finger that presses twice", async () => {
    const press = () => move("H3", "out", "ada").set("idempotency-key", "desk-0001");
    const answers = [await press(), await press()];
    expect(answers.map(({ status }) => status)).toEqual([200, 200]);
    expect(answers[1]?.body).toEqual(answers[0]?.body);
  });
});

describe("the database itself", () => {
  const insert = (table: string, columns: object) =>
    runSql(
      app.connection,
      `insert into ${table} select (jsonb_populate_record(null::${table}, $1::jsonb)).*`,
      [
        JSON.stringify({
          id: crypto.randomUUID(),
          club_id: app.session.clubId,
          session_id: app.session.id,
          since: "2027-03-20T19:30:00Z",
          ...columns,
        }),
      ],
    );
  const out = { handset_code: "H3", state: "out", member_code: "bo", until: "2027-03-20T23:59:00Z" };

  // PostgreSQL manual, appendix A: 23P01 exclusion, 23514 check, 23503 foreign key
  it("refuses a handset that is out twice, or to two people, and a member who is here twice", async () => {
    await expect(insert("night_handsets", out)).rejects.toMatchObject({ code: "23P01" });
    await expect(insert("night_handsets", { ...out, member_code: "ada" })).rejects.toMatchObject({
      code: "23P01",
    });
    await expect(insert("night_attendances", { member_code: "ada" })).rejects.toMatchObject({
      code: "23P01",
    });
  });

  it("refuses a handset that is out to nobody, or flat in somebody's hands", async () => {
    await expect(insert("night_handsets", { ...out, member_code: null })).rejects.toMatchObject({
      code: "23514",
    });
    await expect(insert("night_handsets", { ...out, state: "flat" })).rejects.toMatchObject({
      code: "23514",
    });
  });

  it("refuses what another club has", async () => {
    await expect(insert("night_handsets", { ...out, handset_code: "H77" })).rejects.toMatchObject({
      code: "23503",
    });
    await expect(insert("night_handsets", { ...out, club_id: crypto.randomUUID() })).rejects.toMatchObject({
      code: "23503",
    });
  });
});
