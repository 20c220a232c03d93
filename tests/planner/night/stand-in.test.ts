import { describe, expect, it } from "vitest";
import {
  findHindrances,
  findNextNeed,
  type NightStock,
  type RestOfWorking,
  type StandIn,
  type Use,
} from "../../../src/planner/night/stand-in.ts";

const engine = (code: string, address: number | null, analogAllowed = false): StandIn => ({
  code,
  decoder: address === null ? null : { kind: address > 127 ? "long" : "short", address, analogAllowed },
});

const use = (train: string, locomotive: string, fromS: number, more: Partial<Use> = {}): Use => ({
  train,
  locomotives: [locomotive],
  state: "waiting",
  fromS,
  toS: fromS + 600,
  systems: ["blue"],
  ...more,
});

const rest: RestOfWorking = {
  train: "101",
  locomotives: ["A"],
  toS: 1_000,
  analogSection: null,
  digitalSection: "L1",
  systems: ["blue"],
};

const night = (more: Partial<NightStock> = {}): NightStock => ({
  stock: [engine("A", 3), engine("B", 4)],
  uses: [use("101", "A", 400, { state: "running" })],
  failed: new Set(["A"]),
  ...more,
});

const codes = (standIn: StandIn, on: RestOfWorking = rest, at: NightStock = night()) =>
  findHindrances(standIn, on, at).map(({ code }) => code);

describe("a locomotive stands in for one that failed", () => {
  it("where nothing hinders it", () => {
    expect(codes(engine("B", 4))).toEqual([]);
  });

  it("unless it failed too, or is in the train already", () => {
    expect(codes(engine("A", 3))).toEqual(["failed-too", "in-this-train"]);
  });

  it("unless another train has it, or departs with it before this one is there", () => {
    const withB = (more: Partial<Use>, fromS = 0) =>
      codes(engine("B", 4), rest, night({ uses: [use("102", "B", fromS, more)] }));
    expect(withB({ state: "running" })).toEqual(["busy"]);
    expect(withB({}, 999)).toEqual(["busy"]);
    // half-open: it may depart as the other arrives
    expect(withB({}, 1_000)).toEqual([]);
    expect(withB({ state: "arrived" })).toEqual([]);
  });

  it("on digital track only with a decoder, on analog track only with one that permits it or with none", () => {
    const analog = { ...rest, analogSection: "Q1", digitalSection: null };
    const both = { ...rest, analogSection: "Q1" };
    expect(codes(engine("B", null))).toEqual(["no-decoder"]);
    expect(codes(engine("B", null), analog)).toEqual([]);
    expect(codes(engine("B", 4), analog)).toEqual(["digital-only"]);
    expect(codes(engine("B", 4, true), both)).toEqual([]);
    expect(codes(engine("B", null), both)).toEqual(["no-decoder"]);
    expect(codes(engine("B", 4), both)).toEqual(["digital-only"]);
  });

  it("unless a locomotive of the night on the same command system answers to its address", () => {
    const stock = [engine("A", 3), engine("B", 4), engine("C", 4)];
    const withC = (more: Partial<Use>) => night({ stock, uses: [use("102", "C", 9_000, more)] });
    expect(codes(engine("B", 4), rest, withC({}))).toEqual(["address-taken"]);
    // it still stands on live track
    expect(codes(engine("B", 4), rest, withC({ state: "arrived" }))).toEqual(["address-taken"]);
    expect(codes(engine("B", 4), rest, withC({ systems: ["red"] }))).toEqual([]);
    expect(codes(engine("B", 4), rest, { ...withC({}), failed: new Set(["A", "C"]) })).toEqual([]);
    expect(codes(engine("B", 4), rest, night({ stock }))).toEqual([]);
  });

  it("with the address of the one that failed, and with the same number as a long address", () => {
    expect(codes(engine("B", 3))).toEqual([]);
    // short 3 and long 3 are two addresses: the packet formats of NMRA S-9.2 and S-9.2.1 keep them apart
    const long: StandIn = { code: "B", decoder: { kind: "long", address: 5, analogAllowed: false } };
    const stock = [long, engine("C", 5)];
    expect(codes(long, rest, night({ stock, uses: [use("102", "C", 9_000)] }))).toEqual([]);
  });
});

describe("a locomotive that stands in", () => {
  it("is needed again by the first train after the working that has it", () => {
    const uses = [
      use("105", "B", 3_000),
      use("103", "B", 2_000),
      use("102", "B", 500),
      use("104", "B", 1_500, { state: "arrived" }),
    ];
    expect(findNextNeed("B", rest, uses)?.train).toBe("103");
    expect(findNextNeed("C", rest, uses)).toBeNull();
  });
});
