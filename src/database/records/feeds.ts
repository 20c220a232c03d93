import type { CommandSystem, Controller, District, Selector, Supply } from "../../../shared/layout.ts";
import type { Conductor } from "../../../shared/vocabulary.ts";
import type * as rows from "../generated/client.ts";
import type { Prisma } from "../generated/client.ts";
import type { KeptColumn, RecordTable } from "./record-table.ts";

export const commandSystemTable: RecordTable<CommandSystem, rows.CommandSystem> = {
  model: "commandSystem",
  toColumns: (system): Omit<Prisma.CommandSystemCreateManyInput, KeptColumn> => ({
    name: system.name,
    mostHandsets: system.mostHandsets,
    mostAddresses: system.mostAddresses,
    shortAddressMost: system.shortAddressMost,
    longAddressMost: system.longAddressMost,
    note: system.note,
  }),
  toBody: (row) => ({
    code: row.code,
    name: row.name,
    mostHandsets: row.mostHandsets,
    mostAddresses: row.mostAddresses,
    shortAddressMost: row.shortAddressMost,
    longAddressMost: row.longAddressMost,
    note: row.note,
  }),
};

export const supplyTable: RecordTable<Supply, rows.Supply> = {
  model: "supply",
  toColumns: (supply): Omit<Prisma.SupplyCreateManyInput, KeptColumn> => ({
    name: supply.name,
    commandSystemCode: supply.commandSystem,
    ratingMa: supply.ratingMa,
    accessoryMa: supply.accessoryMa,
    volts: supply.volts,
    sourceOhm: supply.sourceOhm,
    note: supply.note,
  }),
  toBody: (row) => ({
    code: row.code,
    name: row.name,
    commandSystem: row.commandSystemCode,
    ratingMa: row.ratingMa,
    accessoryMa: row.accessoryMa,
    volts: row.volts,
    sourceOhm: row.sourceOhm,
    note: row.note,
  }),
};

export const districtTable: RecordTable<District, rows.District> = {
  model: "district",
  toColumns: (district): Omit<Prisma.DistrictCreateManyInput, KeptColumn> => ({
    name: district.name,
    supplyCode: district.supply,
    breakerMa: district.breakerMa,
    tripDelayMs: district.tripDelayMs,
    wireConductor: district.wiring?.conductor ?? null,
    wireLengthMm: district.wiring?.lengthMm ?? null,
    wireTemperatureC: district.wiring?.temperatureC ?? null,
    note: district.note,
  }),
  toBody: (row) => ({
    code: row.code,
    name: row.name,
    supply: row.supplyCode,
    breakerMa: row.breakerMa,
    tripDelayMs: row.tripDelayMs,
    wiring: toWiring(row),
    note: row.note,
  }),
};

/** Known whole or not at all: the database sees to that. */
function toWiring({ wireConductor, wireLengthMm, wireTemperatureC }: rows.District): District["wiring"] {
  if (wireConductor === null || wireLengthMm === null || wireTemperatureC === null) return null;
  return {
    conductor: wireConductor as Conductor,
    lengthMm: wireLengthMm,
    temperatureC: wireTemperatureC,
  };
}

type ControllerRow = Prisma.ControllerGetPayload<{ include: { outputs: true } }>;

export const controllerTable: RecordTable<Controller, ControllerRow> = {
  model: "controller",
  toColumns: (controller): Omit<Prisma.ControllerCreateManyInput, KeptColumn> => ({
    name: controller.name,
    placeCode: controller.place,
    transformerMa: controller.transformerMa,
    accessoryMa: controller.accessoryMa,
    note: controller.note,
  }),
  toBody: (row) => ({
    code: row.code,
    name: row.name,
    place: row.placeCode,
    transformerMa: row.transformerMa,
    accessoryMa: row.accessoryMa,
    outputs: row.outputs.map(({ code, name, ratingMa }) => ({ code, name, ratingMa })),
    note: row.note,
  }),
  parts: [
    {
      field: "outputs",
      model: "controllerOutput",
      owner: "controllerId",
      key: "code",
      toRows: (controller): Omit<Prisma.ControllerOutputCreateManyInput, "clubId" | "controllerId">[] =>
        controller.outputs.map(({ code, name, ratingMa }, position) => ({ position, code, name, ratingMa })),
    },
  ],
};

type SelectorRow = Prisma.SelectorGetPayload<{ include: { outputs: true } }>;

export const selectorTable: RecordTable<Selector, SelectorRow> = {
  model: "selector",
  toColumns: (selector): Omit<Prisma.SelectorCreateManyInput, KeptColumn> => ({
    sectionCode: selector.section,
    note: selector.note,
  }),
  toBody: (row) => ({
    code: row.code,
    section: row.sectionCode,
    outputs: row.outputs.map((output) => output.outputCode),
    note: row.note,
  }),
  parts: [
    {
      field: "outputs",
      model: "selectorOutput",
      owner: "selectorId",
      toRows: (selector): Omit<Prisma.SelectorOutputCreateManyInput, "clubId" | "selectorId">[] =>
        selector.outputs.map((outputCode, position) => ({ position, outputCode })),
    },
  ],
};
