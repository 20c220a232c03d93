import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { demoClub, loadDemo } from "../../../seed/index.ts";
import { CLEAN, PLANTED } from "../../../seed/sessions.ts";
import type { CheckReport } from "../../../shared/check.ts";
import type { Effect, TryStep } from "../../../shared/what-if.ts";
import { testApp } from "../../support/test-app.ts";

const club = `/api/clubs/${demoClub.code}`;
const slot = `${club}/sessions/${CLEAN.session}/slots/first`;
let served: Awaited<ReturnType<typeof testApp>>;

beforeAll(async () => {
  // before both nights of the demo
  served = await testApp({ clock: { now: () => new Date("2027-03-01T12:00:00Z") } });
  await loadDemo(async (record, document) => {
    await served.request.post("/api/clubs").send(record).expect(201);
    await served.request.post(`${club}/import`).send(document).expect(200);
  });
});
afterAll(() => served.close());

const attempt = (...steps: readonly object[]) => served.request.post(`${slot}/try`).send({ steps });
const check = async (): Promise<CheckReport> => (await served.request.post(`${slot}/check`).expect(200)).body;
const effects = async (changes: object) =>
  (await served.request.post(`${club}/effects`).send({ changes }).expect(200)).body as {
    headline: string;
    slots: Effect[];
  };

/** A stored record as one would send it back. */
async function record(address: string) {
  const { version, updatedAt, ...body } = (await served.request.get(`${club}/${address}`).expect(200)).body;
  return body;
}

/** The first train with a rake, and another locomotive than its own. */
async function anyTrain() {
  const { items } = (
    await served.request.get(`${club}/timetables/weekday/versions/1/trains?limit=200`).expect(200)
  ).body as {
    items: { code: string; rakes: string[]; motivePower: { locomotive: string }[]; path: object[] }[];
  };
  const train = items.find(({ rakes, motivePower }) => rakes.length > 0 && motivePower.length > 0);
  const own = train?.motivePower[0]?.locomotive ?? "";
  const other = items.flatMap(({ motivePower }) => motivePower).find(({ locomotive }) => locomotive !== own);
  return { code: train?.code ?? "", own, other: other?.locomotive ?? "", rake: train?.rakes[0] ?? "" };
}

describe("what is tried on a slot", () => {
  it("answers with the very check that the slot has once the trains are so, and stores nothing", async () => {
    const { code, own, other, rake } = await anyTrain();
    const steps: TryStep[] = [
      { do: "move", train: code, minutes: 25.5 },
      { do: "change-locomotive", train: code, from: own, to: other },
      { do: "leave-rake", train: code, rake },
    ];
    const before = await check();
    const tried = await attempt(...steps);
    expect(tried.status, JSON.stringify(tried.body)).toBe(200);
    expect(tried.body.trains).toEqual([code]);
    expect(await check()).toEqual(before);
    expect(tried.body.report).not.toEqual(before);

    const kept = await served.request.post(`${slot}/try/keep`).send({ steps, note: "Tried" }).expect(201);
    expect(kept.body).toMatchObject({
      timetable: "weekday",
      version: { number: 3, state: "draft", note: "Tried" },
    });
    const session = await record(`sessions/${CLEAN.session}`);
    const slots = session.slots.map((one: { code: string }) =>
      one.code === "first" ? { ...one, timetableVersion: 3 } : one,
    );
    const put = (body: object) =>
      served.request
        .put(`${club}/sessions/${CLEAN.session}`)
        .set("if-match", "*")
        .send({ ...session, ...body })
        .expect(200);
    await put({ slots });
    expect(await check()).toEqual(tried.body.report);
    await put({});
    expect(await check()).toEqual(before);
  });

  it("names what appears and what clears against the slot as it is", async () => {
    const planted = `${club}/sessions/${PLANTED.session}/slots/only`;
    const before: CheckReport = (await served.request.post(`${planted}/check`).expect(200)).body;
    const clash = before.findings.find(({ code }) => code === "district-will-trip");
    const train = clash?.shares[0]?.train ?? "";
    const steps = [{ do: "leave-train", train }];
    const { body } = await served.request.post(`${planted}/try`).send({ steps }).expect(200);
    const codes = (list: { code: string }[]) => list.map(({ code }) => code);
    expect(codes(body.clears)).toContain("district-will-trip");
    expect(body.report.trains.map(({ code }: { code: string }) => code)).not.toContain(train);
    // what is left, what appears and what clears account for each other
    expect(body.report.findings.length).toBe(
      before.findings.length - body.clears.length + body.appears.length,
    );
  });

  it.each([
    ["a train that the slot does not have", { do: "move", train: "0X0", minutes: 1 }, "train"],
    ["a move out of the day", { do: "move", train: "", minutes: -1_440 }, "minutes"],
    ["a locomotive that it does not have", { do: "change-locomotive", train: "", from: "?", to: "" }, "from"],
    ["a rake that it does not have", { do: "leave-rake", train: "", rake: "none" }, "rake"],
  ])("refuses %s, naming the step", async (_, step, field) => {
    const { code, other } = await anyTrain();
    const filled = {
      ...step,
      train: step.train || code,
      ...("from" in step && { from: "nobody", to: other }),
    };
    const { body } = await attempt({ do: "move", train: code, minutes: 1 }, filled).expect(422);
    expect(body.errors).toMatchObject([{ pointer: `/body/steps/1/${field}` }]);
  });

  it("refuses a locomotive that is not on the roster, also where it would be kept", async () => {
    const { code, own } = await anyTrain();
    const steps = [{ do: "change-locomotive", train: code, from: own, to: "nobody" }];
    for (const address of [`${slot}/try`, `${slot}/try/keep`]) {
      const { body } = await served.request.post(address).send({ steps }).expect(422);
      expect(body.errors).toMatchObject([{ pointer: "/body/steps/0/to" }]);
    }
  });

  it.each([
    [
      "has no stock left",
      { do: "leave-rake", train: "0X1", rake: "G1" },
      "rake",
      /neither stock nor a length/,
    ],
    [
      "has one locomotive twice",
      { do: "change-locomotive", train: "0X2", from: "2801", to: "2802" },
      "to",
      /2802 is in this train already/,
    ],
  ])("refuses a step after which a train %s, also where it would be kept", async (_, step, field, why) => {
    const path = [
      { section: "HY1", depart: "6:41" },
      { section: "HY1", arrive: "6:45" },
    ];
    const rakeAlone = { code: "0X1", name: "Rake alone", rakes: ["G1"], path };
    const engines = ["2801", "2802"].map((locomotive) => ({ locomotive }));
    const twoEngines = { code: "0X2", name: "Two engines", motivePower: engines, path };
    const versions = `${club}/timetables/weekday/versions`;
    const draft = (await served.request.post(versions).send({ from: null, note: "Odd" }).expect(201)).body;
    for (const train of [rakeAlone, twoEngines])
      await served.request.post(`${versions}/${draft.number}/trains`).send(train).expect(201);
    const session = await record(`sessions/${CLEAN.session}`);
    const slots = session.slots.map((one: object) => ({ ...one, timetableVersion: draft.number }));
    const put = (body: object) =>
      served.request
        .put(`${club}/sessions/${CLEAN.session}`)
        .set("if-match", "*")
        .send({ ...session, ...body })
        .expect(200);
    await put({ slots });
    const steps = [{ do: "move", train: step.train, minutes: 1 }, step];
    const last = async () =>
      (await served.request.get(`${versions}?limit=200`).expect(200)).body.items.length;
    const before = await last();
    for (const address of [`${slot}/try`, `${slot}/try/keep`]) {
      const { body } = await served.request.post(address).send({ steps }).expect(422);
      expect(body.errors).toMatchObject([
        { pointer: `/body/steps/1/${field}`, detail: expect.stringMatching(why) },
      ]);
    }
    expect(await last()).toBe(before);
    await put({});
  });
});

describe("what changed records do to the nights to come", () => {
  it("is what the check then says, and stores nothing", async () => {
    const district = await record("districts/D-West");
    const weaker = { ...district, breakerMa: 300 };
    const told = await effects({ layout: { districts: [weaker] } });
    expect(told.headline).toMatch(/would stop\.$/);
    const first = told.slots.find((one) => one.session === CLEAN.session && one.slot === "first");
    expect(first).toMatchObject({ before: { verdict: "runs" }, after: { verdict: "stopped" }, breaks: true });
    expect(
      first?.appears.some(
        ({ code, districts }) => /^district-will-trip$/.test(code) && districts[0] === "D-West",
      ),
    ).toBe(true);
    expect((await check()).verdict).toBe("runs");
    await served.request.put(`${club}/districts/D-West`).set("if-match", "*").send(weaker).expect(200);
    const really = await check();
    expect({ verdict: really.verdict, stops: really.stops, warnings: really.warnings }).toEqual(first?.after);
    const back = await effects({ layout: { districts: [district] } });
    expect(back.headline).toMatch(/would run again\.$/);
    await served.request.put(`${club}/districts/D-West`).set("if-match", "*").send(district).expect(200);
  });

  it("tells of a change that leaves the plan in pieces, and which piece is missing", async () => {
    const told = await effects({ removed: { locomotives: [(await anyTrain()).own] } });
    const first = told.slots.find((one) => one.slot === "first");
    expect(first).toMatchObject({ after: null, breaks: true });
    expect(first?.hindrance).toMatch(/no locomotive/);
  });

  it("names a second address used twice beside the one that there is", async () => {
    const { items } = (await served.request.get(`${club}/decoders?limit=200`).expect(200)).body;
    const of = (locomotive: string) =>
      items.find((decoder: { locomotive: string | null }) => decoder.locomotive === locomotive);
    const { code, analogAllowed, note } = of("2802");
    const { addressKind, address } = of("2801");
    const decoder = { code, locomotive: "2802", addressKind, address, analogAllowed, note };
    const told = await effects({ roster: { decoders: [decoder] } });
    const night = told.slots.find((one) => one.session === PLANTED.session);
    // the demo's night has one address used twice; this is another
    expect(night?.before?.stops).toBeGreaterThan(0);
    expect(night?.after?.stops).toBe((night?.before?.stops ?? 0) + 1);
    expect(night?.appears.map((one) => [one.code, one.locomotives])).toEqual([
      ["address-used-twice", ["2801", "2802"]],
    ]);
  });

  it("says of the nights as they stand where nothing changes", async () => {
    const told = await effects({});
    expect(told.headline).toBe("No night to come is changed by this.");
    expect(told.slots.map((one) => one.slot)).toEqual(["first", "second", "only"]);
    for (const one of told.slots) expect(one.after).toEqual(one.before);
  });

  it("asks for records that are as they must be", async () => {
    const { body } = await served.request
      .post(`${club}/effects`)
      .send({ changes: { layout: { districts: [{ code: "D-West" }] } } })
      .expect(400);
    expect(body.errors[0].pointer).toMatch(/^\/body\/changes\/layout\/districts\/0/);
  });
});
