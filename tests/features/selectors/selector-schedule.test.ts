import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { demoClub, loadDemo } from "../../../seed/index.ts";
import { CLEAN, PLANTED } from "../../../seed/sessions.ts";
import type { CheckReport } from "../../../shared/check.ts";
import type { SelectorSchedule } from "../../../shared/selector-schedule.ts";
import { testApp } from "../../support/test-app.ts";

const club = `/api/clubs/${demoClub.code}`;
const slotOf = (session: string, slot: string) => `${club}/sessions/${session}/slots/${slot}`;
let served: Awaited<ReturnType<typeof testApp>>;

beforeAll(async () => {
  served = await testApp();
  await loadDemo(async (record, document) => {
    await served.request.post("/api/clubs").send(record).expect(201);
    await served.request.post(`${club}/import`).send(document).expect(200);
  });
});
afterAll(() => served.close());

const scheduleOf = async (session: string, slot: string): Promise<SelectorSchedule> =>
  (await served.request.post(`${slotOf(session, slot)}/selector-schedule`).expect(200)).body;
const checkOf = async (session: string, slot: string): Promise<CheckReport> =>
  (await served.request.post(`${slotOf(session, slot)}/check`).expect(200)).body;

describe("the selector schedule of a slot", () => {
  it("says when to turn what, by time and by section, and that no working plan needs fewer turns", async () => {
    const schedule = await scheduleOf(CLEAN.session, "first");
    expect(schedule.status).toBe("made");
    expect(schedule.proven).toBe(true);
    const turns = schedule.moments.flatMap(({ turns: together }) => together);
    expect(turns).toHaveLength(schedule.turns);
    expect(schedule.sections).toHaveLength(schedule.selectors);
    expect(schedule.headline).toContain(`${schedule.turns} turns on ${schedule.selectors} selectors`);
    expect(schedule.headline).toContain("No working plan needs fewer turns: proven.");
    for (const { code, turns: count, bands } of schedule.sections) {
      const own = turns.filter(({ section }) => section === code);
      expect(own).toHaveLength(count);
      // from all off, each turn takes the selector from where the one before left it
      expect(own.map(({ from }) => from)).toEqual([null, ...own.slice(0, -1).map(({ to }) => to)]);
      expect(bands.map(({ output }) => output)).toEqual(own.flatMap(({ to }) => to ?? []));
    }
    for (const { atMs, turns: together } of schedule.moments)
      for (const { mayFromMs, mayToMs } of together) {
        expect(atMs).toBeGreaterThanOrEqual(mayFromMs);
        expect(atMs).toBeLessThanOrEqual(mayToMs);
      }
  });

  it("gives every run of the check the output that its sections then stand at", async () => {
    const schedule = await scheduleOf(CLEAN.session, "first");
    const { analog } = await checkOf(CLEAN.session, "first");
    expect(analog.runs.length).toBeGreaterThan(20);
    for (const run of analog.runs)
      for (const { section, fromMs, toMs } of run.sections) {
        const bands = schedule.sections.find(({ code }) => code === section)?.bands ?? [];
        expect(bands).toContainEqual(
          expect.objectContaining({ output: run.output, fromMs: expect.toSatisfy((ms) => ms <= fromMs) }),
        );
        expect(bands.some((band) => band.fromMs <= fromMs && toMs <= band.toMs)).toBe(true);
      }
  });

  it("is a sheet of one row a turn as well", async () => {
    const schedule = await scheduleOf(CLEAN.session, "first");
    const sheet = await served.request
      .get(`${slotOf(CLEAN.session, "first")}/selector-schedule.csv`)
      .expect(200)
      .expect("content-type", "text/csv; charset=utf-8");
    const [heading, first, ...rest] = sheet.text.trim().split("\r\n");
    expect(heading).toContain("layout time,real time,section,from,to,train");
    const moment = schedule.moments[0];
    const turn = moment?.turns[0];
    // in March London's clocks show UTC (IANA time zone database)
    const wallTime = `${moment?.startsAt?.slice(0, "2027-03-20T19:00:00".length)}+00:00`;
    expect(first).toContain(`${moment?.at},${wallTime},${turn?.section},off,${turn?.to},${turn?.train}`);
    expect(rest).toHaveLength(schedule.turns - 1);
  });

  it("is none where the outputs do not suffice: it says so in the words of the check, and has no sheet", async () => {
    const schedule = await scheduleOf(PLANTED.session, "only");
    expect(schedule).toMatchObject({ status: "no-assignment", turns: 0, proven: false, moments: [] });
    const { findings } = await checkOf(PLANTED.session, "only");
    const ofOutputs = findings.filter(({ code }) => /^outputs?-(too-few|none-reaches)$/.test(code));
    expect(ofOutputs.length).toBeGreaterThan(0);
    expect(schedule.reasons).toEqual(ofOutputs.map(({ sentence, cure }) => ({ sentence, cure })));
    const refused = await served.request.get(`${slotOf(PLANTED.session, "only")}/selector-schedule.csv`);
    expect([refused.status, refused.body.code]).toEqual([422, "unprocessable"]);
  });

  it("changes nothing, and is nobody's but the club's", async () => {
    const before = await checkOf(CLEAN.session, "first");
    await scheduleOf(CLEAN.session, "first");
    expect(await checkOf(CLEAN.session, "first")).toEqual(before);
    await served.request.post(`${slotOf("nowhere", "first")}/selector-schedule`).expect(404);
  });
});
