import { afterAll, beforeAll, expect, it } from "vitest";
import { testApp } from "../support/test-app.ts";
import { CLUB, madeClub, NIGHT } from "./made-club.ts";

let service: Awaited<ReturnType<typeof testApp>>;

beforeAll(async () => {
  service = await testApp();
});
afterAll(() => service.close());

it("runs clean, so that its night opens as any other, and has handsets for all its trains but not of all kinds", async () => {
  const { request } = service;
  const size = { members: 200, lanes: 12, turns: 5, seed: 1 };
  await request.post("/api/clubs").send(CLUB).expect(201);
  await request.post(`/api/clubs/${CLUB.code}/import`).send(madeClub(size)).expect(200);
  const { body } = await request
    .post(`/api/clubs/${CLUB.code}/sessions/${NIGHT.session}/slots/${NIGHT.slot}/check`)
    .expect(200);
  expect(body.findings).toEqual([]);
  expect(body.trains).toHaveLength(60);
});
