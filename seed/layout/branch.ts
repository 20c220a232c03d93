import type { z } from "zod";
import type { section } from "../../shared/layout.ts";

type Section = z.input<typeof section>;

const BRANCH = { area: "branch", wiring: "analog", maxSpeedKmh: 45 } as const;

function openLine(code: string, name: string, lengthMm: number): Section {
  return { ...BRANCH, code, name, use: "line", lengthMm };
}

function road(
  code: string,
  name: string,
  place: string,
  lengthMm: number,
  use: Section["use"],
  mustClear = false,
): Section {
  return { ...BRANCH, code, name, place, lengthMm, use, mustClear };
}

/** From the junction to the quay. V3 is the one way across between digital and analog track. */
export const branchSections: Section[] = [
  {
    code: "V3",
    name: "Vennagate Junction, platform 3 (changeover)",
    area: "branch",
    place: "VENN",
    use: "platform road",
    lengthMm: 1_500,
    wiring: "both",
    changeover: true,
    district: "D-Junction",
    maxSpeedKmh: 90,
    mustClear: true,
    note: "Double gaps at both ends; a break-before-make switch, worked only while the train stands.",
  },
  road("V5", "Vennagate Junction, branch bay", "VENN", 1_200, "platform road"),
  openLine("B1", "Branch, the cutting", 2_800),
  road("LM1", "Larkmoss, platform 1", "LARK", 1_200, "loop", true),
  road("LM2", "Larkmoss, platform 2", "LARK", 1_200, "loop", true),
  openLine("B2", "Branch, the moss", 3_200),
  openLine("B3", "Branch, the viaduct", 2_600),
  road("M1", "Millorne, platform 1", "MILL", 1_300, "loop", true),
  road("M2", "Millorne, platform 2", "MILL", 1_300, "loop", true),
  road("MG", "Millorne, goods road", "MILL", 900, "siding"),
  openLine("B4", "Branch, the dunes", 2_400),
  openLine("B5", "Branch, the sea wall", 3_000),
  road("T1", "Tolver Quay, platform 1", "TOLV", 1_400, "platform road"),
  road("T2", "Tolver Quay, platform 2", "TOLV", 1_300, "platform road"),
  road("T3", "Tolver Quay, carriage siding", "TOLV", 1_000, "siding"),
  road("TQ", "Tolver Quay, quay road", "TOLV", 1_600, "siding"),
];
