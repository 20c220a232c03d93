import type { LayoutDocument } from "../../../shared/documents.ts";
import type { Section as SectionRecord } from "../../../shared/layout.ts";
import { latestTest } from "../../../shared/short-tests.ts";
import type { Control } from "../../../shared/vocabulary.ts";
import type { District, Output, Problem, Section, SectionControl } from "../../planner/problem.ts";
import { OHM_PER_METRE_AT_20 } from "../../planner/wiring/conductors.ts";
import type { PlanSource } from "./plan-source.ts";
import { type CodeIndex, indexCodes, type PlanFault, resolve, resolveOptional } from "./references.ts";

type LayoutParts = Pick<
  Problem,
  | "sections"
  | "links"
  | "commandSystems"
  | "supplies"
  | "districts"
  | "controllers"
  | "outputs"
  | "places"
  | "walks"
>;

type Kind = "areas" | "places" | "commandSystems" | "supplies" | "districts" | "sections";

/** Looks a code up among the layout's records of a kind, collecting a fault where there is none. */
export interface LayoutIndexes {
  resolve(kind: Kind, code: string, pointer: string): number;
}

/** The layout half of the planner's problem. Order of every list is the order of the records. */
export function toLayoutParts(
  source: PlanSource,
  faults: PlanFault[],
): { readonly parts: LayoutParts; readonly indexes: LayoutIndexes } {
  const { layout } = source;
  const index = {
    areas: indexCodes("area", "/layout/areas", layout.areas, faults),
    places: indexCodes("place", "/layout/places", layout.places, faults),
    commandSystems: indexCodes("command system", "/layout/commandSystems", layout.commandSystems, faults),
    supplies: indexCodes("supply", "/layout/supplies", layout.supplies, faults),
    districts: indexCodes("district", "/layout/districts", layout.districts, faults),
    sections: indexCodes("section", "/layout/sections", layout.sections, faults),
  } satisfies Record<Kind, CodeIndex>;
  const outputs = toOutputs(layout, faults);
  const reach = toReach(layout, index.sections, outputs, faults);
  const controls = toAreaControls(source, index.areas, faults);
  checkLines(layout, index.places, faults);
  indexCodes("short test", "/layout/shortTests", layout.shortTests ?? [], faults);
  layout.shortTests?.forEach((test, i) => {
    resolve(index.districts, test.district, `/layout/shortTests/${i}/district`, faults);
  });
  const parts: LayoutParts = {
    sections: layout.sections.map((section, i) => toSection(section, i, { index, reach, controls, faults })),
    links: layout.links.map((link, i) => ({
      from: resolve(index.sections, link.from, `/layout/links/${i}/from`, faults),
      to: resolve(index.sections, link.to, `/layout/links/${i}/to`, faults),
      oneWay: link.oneWay,
    })),
    commandSystems: layout.commandSystems.map((system) => ({
      code: system.code,
      handsets: source.handsets.filter((h) => h.commandSystem === system.code && h.state === "ready").length,
      mostHandsets: system.mostHandsets ?? 0,
      mostAddresses: system.mostAddresses ?? 0,
      shortAddressMost: system.shortAddressMost,
      longAddressMost: system.longAddressMost,
    })),
    supplies: layout.supplies.map((supply, i) => ({
      code: supply.code,
      commandSystem: resolve(
        index.commandSystems,
        supply.commandSystem,
        `/layout/supplies/${i}/commandSystem`,
        faults,
      ),
      ratingMa: supply.ratingMa,
      accessoryMa: supply.accessoryMa,
      volts: supply.volts,
      sourceOhm: supply.sourceOhm,
    })),
    districts: layout.districts.map((district, i) => ({
      code: district.code,
      supply: resolve(index.supplies, district.supply, `/layout/districts/${i}/supply`, faults),
      breakerMa: district.breakerMa,
      tripDelayMs: district.tripDelayMs,
      wiring: district.wiring && {
        ohmPerMetreAt20: OHM_PER_METRE_AT_20[district.wiring.conductor],
        lengthMm: district.wiring.lengthMm,
        temperatureC: district.wiring.temperatureC,
      },
      tested: toTested(layout.shortTests, district.code),
    })),
    controllers: layout.controllers.map(({ code, transformerMa, accessoryMa }) => ({
      code,
      transformerMa,
      accessoryMa,
    })),
    outputs: outputs.list,
    places: layout.places.map(({ code, xMm, yMm }) => ({ code, xMm, yMm })),
    walks: layout.walks.map((walk, i) => ({
      from: resolve(index.places, walk.from, `/layout/walks/${i}/from`, faults),
      to: resolve(index.places, walk.to, `/layout/walks/${i}/to`, faults),
      ms: walk.seconds * 1_000,
    })),
  };
  return {
    parts,
    indexes: { resolve: (kind, code, pointer) => resolve(index[kind], code, pointer, faults) },
  };
}

/** What the last short test said; nothing where the plan says nothing of tests. */
function toTested(tests: LayoutDocument["shortTests"], district: string): District["tested"] {
  if (tests === undefined) return "unsaid";
  return latestTest(tests, district)?.result ?? "untested";
}

interface SectionContext {
  readonly index: Record<Kind, CodeIndex>;
  readonly reach: ReadonlyMap<number, readonly number[]>;
  readonly controls: ReadonlyMap<string, Control>;
  readonly faults: PlanFault[];
}

function toSection(section: SectionRecord, i: number, context: SectionContext): Section {
  const { index, reach, faults } = context;
  const at = `/layout/sections/${i}`;
  resolve(index.areas, section.area, `${at}/area`, faults);
  const control = toControl(section, at, context);
  return {
    code: section.code,
    lengthMm: section.lengthMm,
    place: resolveOptional(index.places, section.place, `${at}/place`, faults),
    control,
    shared: section.sharing === "shared" && control === "digital",
    district: resolveOptional(index.districts, section.district, `${at}/district`, faults),
    outputs: reach.get(i) ?? [],
    maxSpeedKmh: section.maxSpeedKmh ?? 0,
    mustClear: section.mustClear,
    handStaging: section.handStaging,
    returnLoop: section.returnLoop,
  };
}

/** A section that the session asks to run as it is not wired is dead for the night. */
function toControl(section: SectionRecord, at: string, { controls, faults }: SectionContext): SectionControl {
  if (section.changeover) {
    if (section.wiring === "both") return "changeover";
    faults.push({ pointer: `${at}/wiring`, detail: "A changeover section needs wiring `both`." });
    return "dead";
  }
  const asked = controls.get(section.area);
  if (section.wiring !== "both")
    return asked === undefined || asked === section.wiring ? section.wiring : "dead";
  if (asked !== undefined) return asked;
  faults.push({
    pointer: "/slot/areas",
    detail: `Section ${section.code} can be fed both ways: say whether area ${section.area} runs analog or digital.`,
  });
  return "dead";
}

function toAreaControls(source: PlanSource, areas: CodeIndex, faults: PlanFault[]): Map<string, Control> {
  const controls = new Map<string, Control>();
  source.areas.forEach(({ area, control }, i) => {
    resolve(areas, area, `/slot/areas/${i}/area`, faults);
    if (controls.has(area))
      faults.push({
        pointer: `/slot/areas/${i}/area`,
        detail: `Area ${area} stands here twice: keep one entry.`,
      });
    controls.set(area, control);
  });
  return controls;
}

function toOutputs(layout: LayoutDocument, faults: PlanFault[]): { list: Output[]; index: CodeIndex } {
  indexCodes("controller", "/layout/controllers", layout.controllers, faults);
  const list: Output[] = [];
  const positions = new Map<string, number>();
  layout.controllers.forEach((controller, c) => {
    controller.outputs.forEach((output, o) => {
      if (positions.has(output.code))
        faults.push({
          pointer: `/layout/controllers/${c}/outputs/${o}/code`,
          detail: `Output ${output.code} exists already: output codes are unique in the club, give this one another.`,
        });
      positions.set(output.code, list.length);
      list.push({ code: output.code, controller: c, ratingMa: output.ratingMa });
    });
  });
  return { list, index: { kind: "controller output", positions } };
}

/** For each section, by index, the outputs that its selector reaches. */
function toReach(
  layout: LayoutDocument,
  sections: CodeIndex,
  outputs: { readonly index: CodeIndex },
  faults: PlanFault[],
): Map<number, readonly number[]> {
  indexCodes("selector", "/layout/selectors", layout.selectors, faults);
  const reach = new Map<number, readonly number[]>();
  layout.selectors.forEach((selector, i) => {
    const at = `/layout/selectors/${i}`;
    const section = resolve(sections, selector.section, `${at}/section`, faults);
    if (reach.has(section) && section >= 0)
      faults.push({
        pointer: `${at}/section`,
        detail: `Section ${selector.section} has a selector already.`,
      });
    const reached = selector.outputs.map((o, j) => resolve(outputs.index, o, `${at}/outputs/${j}`, faults));
    reach.set(
      section,
      [...new Set(reached)].sort((a, b) => a - b),
    );
  });
  return reach;
}

function checkLines(layout: LayoutDocument, places: CodeIndex, faults: PlanFault[]): void {
  indexCodes("line", "/layout/lines", layout.lines, faults);
  layout.lines.forEach((line, i) => {
    line.stops.forEach((stop, j) => {
      resolve(places, stop.place, `/layout/lines/${i}/stops/${j}/place`, faults);
    });
  });
}
