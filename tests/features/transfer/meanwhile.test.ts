import { afterAll, beforeAll, expect, it } from "vitest";
import { createReadingStore } from "../../../src/features/readings/store.ts";
import { editMeanwhile } from "../../support/edit-meanwhile.ts";
import { appOn, testApp } from "../../support/test-app.ts";
import { makeClub } from "../example-club.ts";

let plain: Awaited<ReturnType<typeof testApp>>;
let club: string;

beforeAll(async () => {
  plain = await testApp();
  club = await makeClub(plain, "north");
});
afterAll(() => plain.close());

const read = async (address: string) => {
  const { version, updatedAt, ...body } = (await plain.request.get(`${club}/${address}`).expect(200)).body;
  return body;
};
const change = async (address: string, given: object) =>
  plain.request
    .put(`${club}/${address}`)
    .set("if-match", "*")
    .send({ ...(await read(address)), ...given })
    .expect(200);

/** A server of which each reading of a model's records is followed by an edit that others make. */
async function withEdits(model: string, work: (one: Awaited<ReturnType<typeof open>>) => Promise<void>) {
  const one = await open(model);
  await work(one).finally(one.close);
}

async function open(model: string) {
  const meanwhile = editMeanwhile(plain.connection, model);
  const server = await appOn(plain.connection, { database: meanwhile.database });
  return {
    ...meanwhile,
    request: server.request,
    close: async () => {
      await server.close();
      await meanwhile.close();
    },
  };
}

it("a sheet of rakes leaves as it is what somebody changes while it comes in", () =>
  withEdits("Rake", async ({ request, once, isDone }) => {
    once(() => change("rakes/R2", { vehicles: 4 }));
    await request
      .post(`${club}/rakes.csv`)
      .set("content-type", "text/csv")
      .send("code,name,lengthMm\nR2,Lit coaches,950\n")
      .expect(200);
    expect(isDone()).toBe(true);
    expect(await read("rakes/R2")).toMatchObject({ lengthMm: 950, vehicles: 4 });
  }));

it("a sheet with columns of its own leaves as it is what somebody changes while it comes in", () =>
  withEdits("Locomotive", async ({ request, once, isDone }) => {
    once(() => change("locomotives/T3", { owner: "Bo Larkin" }));
    const current = { column: null, unit: "mA", constantMa: 300, source: "rule of thumb" };
    const mapping = {
      code: "Number",
      name: null,
      length: { column: "Length", unit: "mm", constantMm: null },
      running: current,
      standing: current,
      stall: current,
      inrush: current,
      maxSpeed: { column: null, unit: "km/h" },
      address: null,
      owner: null,
      note: null,
    };
    const sheet = { text: "Number,Length\nT3,220\n", mapping, dryRun: false };
    const { body } = await request.post(`${club}/roster-sheet`).send(sheet).expect(200);
    expect(isDone()).toBe(true);
    expect(body.locomotives).toMatchObject([{ code: "T3", owner: "Bo Larkin", lengthMm: 220 }]);
    expect(await read("locomotives/T3")).toMatchObject({ lengthMm: 220, owner: "Bo Larkin" });
  }));

it("a sheet of trains leaves as they are the version and what it says nothing of", () =>
  withEdits("Train", async ({ request, once, isDone }) => {
    const trains = "timetables/winter/versions/2/trains";
    once(async () => {
      await change(`${trains}/101`, { priority: 3 });
      await change("timetables/winter/versions/2", { note: "Second thoughts" });
    });
    await request
      .post(`${club}/${trains}.csv`)
      .set("content-type", "text/csv")
      .send(
        "code,name,section,arrive,depart\n101,Coal,W1,,10:01\n,,L1,,\n,,M1,10:05,10:06\n,,L2,,\n,,E1,10:11,\n",
      )
      .expect(200);
    expect(isDone()).toBe(true);
    expect(await read(`${trains}/101`)).toMatchObject({
      priority: 3,
      path: [{ depart: "10:01" }, {}, {}, {}, {}],
    });
    expect(await read("timetables/winter/versions/2")).toMatchObject({ note: "Second thoughts" });
  }));

it("readings are compared with figures and versions of one moment", async () => {
  const { database, once, isDone, close } = editMeanwhile(plain.connection, "Locomotive");
  const versionOf = async () => (await plain.request.get(`${club}/locomotives/E7`).expect(200)).body.version;
  const before = await versionOf();
  once(() => change("locomotives/E7", { note: "Changed while being read" }));
  const store = createReadingStore(database);
  const { parts, versions } = await store.readCompared({ club: "north", session: "march", slot: "first" });
  expect(isDone()).toBe(true);
  expect(parts.roster.locomotives.find(({ code }) => code === "E7")?.note).not.toMatch(/while being read/);
  expect(versions.get("E7")).toBe(before);
  expect(await versionOf()).toBe(before + 1);
  await close();
});
