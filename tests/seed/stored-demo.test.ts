import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { demoClub, demoDocument, loadDemo } from "../../seed/index.ts";
import { plants } from "../../seed/planted.ts";
import { CLEAN, PLANTED } from "../../seed/sessions.ts";
import type { CheckReport } from "../../shared/check.ts";
import type { Comparison } from "../../shared/estimates.ts";
import { testApp } from "../support/test-app.ts";

describe("the demo club, loaded through the service", () => {
  let service: Awaited<ReturnType<typeof testApp>>;
  const club = `/api/clubs/${demoClub.code}`;

  beforeAll(async () => {
    service = await testApp();
    await loadDemo(async (record, document) => {
      await service.request.post("/api/clubs").send(record).expect(201);
      await service.request.post(`${club}/import`).send(document).expect(200);
    });
  });
  afterAll(() => service.close());

  async function checked(session: string, slot: string): Promise<CheckReport> {
    const { body } = await service.request
      .post(`${club}/sessions/${session}/slots/${slot}/check`)
      .expect(200);
    return body;
  }

  test.each(["first", "second"])("runs its clean night without a finding, crew %s", async (slot) => {
    const report = await checked(CLEAN.session, slot);
    expect(report.findings).toEqual([]);
    expect(report.verdict).toBe("runs");
  });

  test("shows on its planted night what was planted, once each", async () => {
    const { findings } = await checked(PLANTED.session, "only");
    expect(findings.map(({ code }) => code).sort()).toEqual(plants.map(({ finding }) => finding).sort());
  });

  test("has two readings of districts: one as the plan says, and one that corrects a locomotive's figure", async () => {
    const url = `${club}/sessions/${CLEAN.session}/slots/first/compare-readings`;
    const { body } = await service.request.post(url).expect(200);
    const off = body.readings.map(({ reading, differenceMa }: Comparison["readings"][number]) => [
      reading,
      differenceMa,
    ]);
    expect(off).toEqual([
      ["night-west", 24],
      ["night-junction", 0],
    ]);
    expect(body.corrections).toMatchObject([
      { locomotive: "D202", state: "standing", oldMa: 150, newMa: 174 },
    ]);
  });

  test("changes nothing when it is imported once more", async () => {
    const before = await service.request.get(`${club}/export`).expect(200);
    await service.request.post(`${club}/import`).send(demoDocument).expect(200);
    const after = await service.request.get(`${club}/export`).expect(200);
    expect(after.body).toEqual(before.body);
  });
});
