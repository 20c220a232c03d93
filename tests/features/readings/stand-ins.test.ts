import { afterAll, beforeAll, expect, it } from "vitest";
import type { Comparison } from "../../../shared/estimates.ts";
import { MINUTE, type NightApp, nightApp } from "../night/run-night.ts";

let app: NightApp;
beforeAll(async () => {
  app = await nightApp("locked");
});
afterAll(() => app.close());

const compare = async (): Promise<Comparison> =>
  (await app.request.post(`${app.url}/sessions/march/slots/first/compare-readings`).expect(200)).body;
const read = (code: string, layoutTime: string) =>
  app.request
    .post(`${app.url}/readings`)
    .send({
      ...{ code, takenOn: "2027-03-20", origin: "night", district: "D-West", ma: 400 },
      ...{ session: "march", slot: "first", layoutTime },
    })
    .expect(201);

it("readings are compared with the locomotives that really ran, from when they stood in on", async () => {
  // 101 runs from 10:00 to 10:04 and from 10:06 to 10:10; all of its path is in D-West. D1 and D2 wait for their trains
  await read("before", "10:03");
  await read("after", "10:07");
  const planned = await compare();
  const engines = ({ readings }: Comparison, code: string) =>
    readings
      .find(({ reading }) => reading === code)
      ?.draws.flatMap(({ locomotive, state }) => (locomotive ? [`${locomotive} ${state}`] : []))
      .sort();
  expect(engines(planned, "after")).toEqual(["D1 standing", "D2 standing", "E7 running"]);

  // the layout clock starts five minutes late and shows 10:04 when E7 fails, which by the plan is 10:24
  app.clock.pass(5 * MINUTE);
  await app.post("clock", { run: "start" }).expect(200);
  app.clock.pass(MINUTE);
  const stands = { locomotive: "E7", replacement: "D1", note: "" };
  await app.post("trains/first/101/replacements", stands).expect(201);
  const found = await compare();
  expect(engines(found, "before")).toEqual(["D1 standing", "D2 standing", "E7 running"]);
  expect(engines(found, "after")).toEqual(["D1 running", "D2 standing"]);
});
