import type { z } from "zod";
import type { area, line, place } from "../../shared/layout.ts";

export const areas: z.input<typeof area>[] = [
  { code: "main", name: "Main line", note: "Digital. Both boosters." },
  { code: "branch", name: "Tolver Quay branch", note: "Analog, with selectors on the junction's panel." },
];

export const places: z.input<typeof place>[] = [
  { code: "WEST", name: "West staging", note: "Six roads behind the back scene, stocked by hand." },
  { code: "YARD", name: "Hesperwick yard", note: "Two long roads and the engine shed." },
  { code: "HESP", name: "Hesperwick" },
  { code: "VENN", name: "Vennagate Junction", note: "The double line ends; the branch begins." },
  {
    code: "PELL",
    name: "Pellaby",
    note: "Passing place on the single line. Its two roads differ in length.",
  },
  { code: "EAST", name: "East staging", note: "Six roads in the far corner, stocked by hand." },
  { code: "LARK", name: "Larkmoss" },
  { code: "MILL", name: "Millorne" },
  { code: "TOLV", name: "Tolver Quay" },
];

export const lines: z.input<typeof line>[] = [
  {
    code: "main",
    name: "Main line",
    stops: [
      { place: "WEST", atMm: 0 },
      { place: "YARD", atMm: 10_200 },
      { place: "HESP", atMm: 11_400 },
      { place: "VENN", atMm: 23_600 },
      { place: "PELL", atMm: 36_000 },
      { place: "EAST", atMm: 48_400 },
    ],
  },
  {
    code: "branch",
    name: "Tolver Quay branch",
    stops: [
      { place: "VENN", atMm: 0 },
      { place: "LARK", atMm: 4_000 },
      { place: "MILL", atMm: 11_100 },
      { place: "TOLV", atMm: 17_900 },
    ],
  },
];
