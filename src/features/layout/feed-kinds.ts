import type { CommandSystem, Controller, District, Selector, Supply } from "../../../shared/layout.ts";
import { commandSystem, controller, district, selector, supply } from "../../../shared/layout.ts";
import { LIMITS } from "../../../shared/limits.ts";
import { code } from "../../../shared/units.ts";
import {
  commandSystemTable,
  controllerTable,
  districtTable,
  selectorTable,
  supplyTable,
} from "../../database/records/feeds.ts";
import { readRecords } from "../../database/records/read-records.ts";
import { clashesByKey } from "../../records/clashes-by-key.ts";
import { findRepeated } from "../../records/flaws.ts";
import type { RecordKind, Reference } from "../../records/record-kind.ts";
import { outputNamedTwice, outputOfAnother, outputTwice, sectionHasSelector } from "./errors.ts";

export const commandSystemKind: RecordKind<CommandSystem> = {
  one: "commandSystem",
  many: "commandSystems",
  about: "A command system is a digital system that handsets belong to.",
  schema: commandSystem,
  example: { code: "blue", name: "Blue system", mostHandsets: 30, mostAddresses: 64 },
  table: commandSystemTable,
  keep: "keep-layout",
  most: LIMITS.commandSystems,
  used: "commandSystem",
};

export const supplyKind: RecordKind<Supply> = {
  one: "supply",
  many: "supplies",
  about: "A supply is a digital booster: the districts it feeds share its rating.",
  schema: supply,
  example: { code: "B1", name: "Booster one", commandSystem: "blue", ratingMa: 5_000, accessoryMa: 120 },
  table: supplyTable,
  keep: "keep-layout",
  most: LIMITS.supplies,
  used: "supply",
  filters: {
    commandSystem: {
      schema: code.meta({ description: "Only those of this command system." }),
      where: (commandSystemCode: string) => ({ commandSystemCode }),
    },
  },
  references: (body) => [{ to: "commandSystem", code: body.commandSystem, path: ["commandSystem"] }],
};

export const districtKind: RecordKind<District> = {
  one: "district",
  many: "districts",
  about: "A power district is the sections behind one circuit breaker.",
  schema: district,
  example: { code: "D-West", name: "District west", supply: "B1", breakerMa: 3_000 },
  table: districtTable,
  keep: "keep-layout",
  most: LIMITS.districts,
  used: "district",
  filters: {
    supply: {
      schema: code.meta({ description: "Only those that this supply feeds." }),
      where: (supplyCode: string) => ({ supplyCode }),
    },
  },
  references: (body) => [{ to: "supply", code: body.supply, path: ["supply"] }],
};

const outputCodes = (body: Controller) => body.outputs.map((output) => output.code);

export const controllerKind: RecordKind<Controller> = {
  one: "controller",
  many: "controllers",
  about:
    "An analog controller; its outputs share its transformer. An output's code is unique in the club; an output under another code is another output.",
  schema: controller,
  example: {
    code: "panel",
    name: "Branch panel",
    place: "west",
    transformerMa: 2_000,
    outputs: [
      { code: "K1", name: "Left knob", ratingMa: 800 },
      { code: "K2", name: "Right knob", ratingMa: 800 },
    ],
  },
  table: controllerTable,
  keep: "keep-layout",
  most: LIMITS.controllers,
  owned: (body) => ({ kind: "output", codes: outputCodes(body) }),
  references: (body) => (body.place === null ? [] : [{ to: "place", code: body.place, path: ["place"] }]),
  flaws: (body) =>
    findRepeated(outputCodes(body)).map(({ at, entry }) => ({
      path: ["outputs", at, "code"],
      detail: outputTwice(entry),
    })),
  clashes: (bodies) =>
    clashesByKey(
      bodies,
      (body) => outputCodes(body).map((key, at) => ({ key, path: ["outputs", at, "code"] })),
      (key, other) => outputOfAnother(key, other.code),
    ),
  rivals: (database, scope, body) =>
    readRecords(database, controllerTable, scope, {
      where: { outputs: { some: { code: { in: outputCodes(body) } } } },
    }),
};

export const selectorKind: RecordKind<Selector> = {
  one: "selector",
  many: "selectors",
  about: "A selector feeds one section from one of several controller outputs, or from none.",
  schema: selector,
  example: { code: "S-Q1", section: "Q1", outputs: ["K1", "K2"] },
  table: selectorTable,
  keep: "keep-layout",
  most: LIMITS.selectors,
  filters: {
    section: {
      schema: code.meta({ description: "Only that of this section." }),
      where: (sectionCode: string) => ({ sectionCode }),
    },
    output: {
      schema: code.meta({ description: "Only those that reach this output." }),
      where: (outputCode: string) => ({ outputs: { some: { outputCode } } }),
    },
  },
  references: (body) => [
    { to: "section", code: body.section, path: ["section"] },
    ...body.outputs.map((output, at): Reference => ({ to: "output", code: output, path: ["outputs", at] })),
  ],
  flaws: (body) =>
    findRepeated(body.outputs).map(({ at, entry }) => ({
      path: ["outputs", at],
      detail: outputNamedTwice(entry),
    })),
  clashes: (bodies) =>
    clashesByKey(
      bodies,
      (body) => [{ key: body.section, path: ["section"] }],
      (key, other) => sectionHasSelector(key, other.code),
    ),
  rivals: (database, scope, body) =>
    readRecords(database, selectorTable, scope, { where: { sectionCode: body.section } }),
};
