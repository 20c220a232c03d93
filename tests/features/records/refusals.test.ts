import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { testApp } from "../../support/test-app.ts";
import { exampleDocument, makeClub } from "../example-club.ts";

let app: Awaited<ReturnType<typeof testApp>>;
let club: string;

beforeAll(async () => {
  app = await testApp();
  club = await makeClub(app, "north");
});
afterAll(() => app.close());

const section = { code: "Z1", name: "Spare", area: "main", use: "loop", lengthMm: 100, wiring: "digital" };
const decoder = { code: "X9", addressKind: "short", address: 5 };
const controller = {
  code: "spare",
  name: "Spare",
  transformerMa: 900,
  outputs: [{ code: "K9", name: "A", ratingMa: 500 }],
};
const [locomotive] = exampleDocument.roster.locomotives;
const handset = { code: "H9", name: "H", commandSystem: "blue", kind: "fixed" };

/** Path, body, status, code, pointer, what the sentence says. */
type Case = readonly [string, object, number, string, string, string];

const CASES: readonly Case[] = [
  // the form of single fields
  [
    "locomotives",
    { ...locomotive, code: "N1", running: { ma: -1, source: "measured" } },
    400,
    "validation-failed",
    "/body/running/ma",
    "at least 0",
  ],
  [
    "locomotives",
    { ...locomotive, code: "N1", running: { ma: 1.5, source: "measured" } },
    400,
    "validation-failed",
    "/body/running/ma",
    "whole number",
  ],
  [
    "locomotives",
    { ...locomotive, code: "N1", running: { ma: 1, source: "a guess" } },
    400,
    "validation-failed",
    "/body/running/source",
    "rule of thumb",
  ],
  ["sections", { ...section, lengthMm: 0 }, 400, "validation-failed", "/body/lengthMm", "at least 1"],
  ["sections", { ...section, code: "no blanks" }, 400, "validation-failed", "/body/code", "letters, digits"],
  [
    "supplies",
    { code: "B9", name: "B", commandSystem: "blue", ratingMa: 0 },
    400,
    "validation-failed",
    "/body/ratingMa",
    "at least 1",
  ],
  ["areas", { code: "a" }, 400, "validation-failed", "/body/name", "missing"],
  // NMRA S-9.2.1: short addresses 1 to 127, long ones 128 to 10239
  [
    "decoders",
    { ...decoder, address: 128 },
    400,
    "validation-failed",
    "/body/address",
    "short address is 1 to 127",
  ],
  [
    "decoders",
    { ...decoder, addressKind: "long", address: 127 },
    400,
    "validation-failed",
    "/body/address",
    "long one 128 to 10239",
  ],
  // fields that do not go together
  ["sections", { ...section, changeover: true }, 422, "unprocessable", "/body/changeover", "wiring to both"],
  ["links", { code: "loop", from: "L1", to: "L1" }, 422, "unprocessable", "/body/to", "name another"],
  [
    "controllers",
    { ...controller, outputs: [...controller.outputs, ...controller.outputs] },
    422,
    "unprocessable",
    "/body/outputs/1/code",
    "K9",
  ],
  [
    "selectors",
    { code: "S", section: "E1", outputs: ["K1", "K1"] },
    422,
    "unprocessable",
    "/body/outputs/1",
    "once",
  ],
  ["handsets", { ...handset, places: ["mid", "mid"] }, 422, "unprocessable", "/body/places/1", "once"],
  // references to what is not there
  [
    "sections",
    { ...section, area: "moon" },
    422,
    "unprocessable",
    "/body/area",
    "No area moon: make it first, or name one of main, quarry.",
  ],
  [
    "sections",
    { ...section, place: "moon" },
    422,
    "unprocessable",
    "/body/place",
    "name one of mid, east, west.",
  ],
  ["sections", { ...section, district: "D-East" }, 422, "unprocessable", "/body/district", "D-West"],
  [
    "lines",
    {
      code: "x",
      name: "X",
      stops: [
        { place: "mid", atMm: 0 },
        { place: "moon", atMm: 1 },
      ],
    },
    422,
    "unprocessable",
    "/body/stops/1/place",
    "No place moon",
  ],
  [
    "links",
    { code: "x", from: "L9", to: "L1" },
    422,
    "unprocessable",
    "/body/from",
    "No section L9: make it first, or name one of L1, L2, E1",
  ],
  [
    "supplies",
    { code: "B9", name: "B", commandSystem: "red", ratingMa: 1 },
    422,
    "unprocessable",
    "/body/commandSystem",
    "No command system red",
  ],
  [
    "districts",
    { code: "D9", name: "D", supply: "B9", breakerMa: 1 },
    422,
    "unprocessable",
    "/body/supply",
    "B1",
  ],
  ["controllers", { ...controller, place: "moon" }, 422, "unprocessable", "/body/place", "No place moon"],
  [
    "selectors",
    { code: "S", section: "E1", outputs: ["K1", "K9"] },
    422,
    "unprocessable",
    "/body/outputs/1",
    "No output K9",
  ],
  ["decoders", { ...decoder, locomotive: "E8" }, 422, "unprocessable", "/body/locomotive", "E7"],
  ["handsets", { ...handset, commandSystem: "red" }, 422, "unprocessable", "/body/commandSystem", "blue"],
  // what only one record may have
  ["decoders", { ...decoder, locomotive: "E7" }, 409, "conflict", "/body/locomotive", "decoder X7 already"],
  [
    "selectors",
    { code: "S", section: "Q1", outputs: ["K1"] },
    409,
    "conflict",
    "/body/section",
    "selector S-Q1 already",
  ],
  [
    "controllers",
    { ...controller, outputs: [{ code: "K2", name: "A", ratingMa: 5 }] },
    409,
    "conflict",
    "/body/outputs/0/code",
    "controller panel already",
  ],
];

it.each(CASES)(
  "a new one of %s, %j, is refused with %d %s at %s",
  async (path, body, status, code, pointer, says) => {
    const response = await app.request.post(`${club}/${path}`).send(body);
    expect([response.status, response.body.code]).toEqual([status, code]);
    expect(response.headers["content-type"]).toContain("application/problem+json");
    const fault = response.body.errors.find((each: { pointer: string }) => each.pointer === pointer);
    expect(fault?.detail).toContain(says);
  },
);

it("every reference that leads nowhere is named at once", async () => {
  const response = await app.request
    .post(`${club}/sections`)
    .send({ ...section, area: "moon", place: "moon", district: "moon", changeover: true });
  expect(response.body.errors.map(({ pointer }: { pointer: string }) => pointer)).toEqual([
    "/body/changeover",
    "/body/area",
    "/body/place",
    "/body/district",
  ]);
});

describe("a record that others refer to is not removed, and the refusal names them", () => {
  it.each([
    ["areas/quarry", "section Q0, section Q1, session march"],
    ["places/mid", "section M1, line main, controller panel, handset H2"],
    ["sections/W1", "link W1-L1, train 101 of winter 1, train 101 of winter 2, train 102 of winter 2"],
    ["sections/Q0", "link M1-Q0, link Q0-Q1, selector S-Q0"],
    ["command-systems/blue", "supply B1, handset H1, handset H2"],
    ["supplies/B1", "district D-West"],
    ["districts/D-West", "section E1, section L1"],
    ["controllers/panel", "selector S-Q0, selector S-Q1"],
    ["locomotives/E7", "decoder X7, reading bench-1, train 101 of winter 1"],
    ["rakes/R2", "train 102 of winter 2"],
    ["timetables/winter", "session march"],
    ["timetables/winter/versions/2", "session march"],
  ])("%s: %s", async (path, users) => {
    const response = await app.request.delete(`${club}/${path}`).set("if-match", "*");
    expect([response.status, response.body.code]).toEqual([409, "in-use"]);
    expect(response.body.detail).toMatch(new RegExp(`is used by ${users}`));
  });

  it("nor is an output taken out of its controller while a selector reaches it", async () => {
    const [panel] = exampleDocument.layout.controllers;
    const response = await app.request
      .put(`${club}/controllers/panel`)
      .set("if-match", "*")
      .send({ ...panel, outputs: panel?.outputs.slice(1) });
    expect([response.status, response.body.code]).toEqual([409, "in-use"]);
    expect(response.body.detail).toContain("Output K1 is used by selector S-Q0.");
  });
});
