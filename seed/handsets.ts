import type { z } from "zod";
import type { handset } from "../shared/handsets.ts";

type Handset = z.input<typeof handset>;

function handsetOf(code: string, name: string, kind: Handset["kind"], more: Partial<Handset> = {}): Handset {
  return { code, name, commandSystem: "club", kind, ...more };
}

/** Twelve, of which eight are ready: two are faulty, two are away with their owners. */
export const handsets: Handset[] = [
  handsetOf("R1", "Radio handset 1", "radio", { batteryMinutes: 300 }),
  handsetOf("R2", "Radio handset 2", "radio", { batteryMinutes: 300 }),
  handsetOf("R3", "Radio handset 3", "radio", { batteryMinutes: 240 }),
  handsetOf("R4", "Radio handset 4", "radio", { batteryMinutes: 240, owner: "Godric Mothersole-Vane" }),
  handsetOf("R5", "Radio handset 5", "radio", {
    batteryMinutes: 90,
    state: "faulty",
    note: "Drops its link; on the bench.",
  }),
  handsetOf("K1", "Cable handset 1", "tethered", { places: ["WEST", "YARD", "HESP"] }),
  handsetOf("K2", "Cable handset 2", "tethered", { places: ["YARD", "HESP", "VENN"] }),
  handsetOf("K3", "Cable handset 3", "tethered", { places: ["VENN", "PELL", "EAST"] }),
  handsetOf("K4", "Cable handset 4", "tethered", {
    places: ["HESP", "VENN"],
    state: "away",
    owner: "Ivo Thackermere",
  }),
  handsetOf("K5", "Cable handset 5", "tethered", {
    places: ["PELL", "EAST"],
    state: "away",
    owner: "Jorvald Pinnerton",
  }),
  handsetOf("F1", "Yard panel handset", "fixed", { places: ["YARD"] }),
  handsetOf("F2", "Junction panel handset", "fixed", {
    places: ["VENN"],
    state: "faulty",
    note: "Its keys stick.",
  }),
];
