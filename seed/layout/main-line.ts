import type { z } from "zod";
import type { section } from "../../shared/layout.ts";

type Section = z.input<typeof section>;

const MAIN = { area: "main", wiring: "digital" } as const;

function openLine(
  code: string,
  name: string,
  lengthMm: number,
  district: string,
  maxSpeedKmh: number,
): Section {
  return { ...MAIN, code, name, use: "line", lengthMm, district, maxSpeedKmh };
}

function platform(
  code: string,
  name: string,
  place: string,
  lengthMm: number,
  district: string,
  more: Partial<Section> = {},
): Section {
  return { ...MAIN, code, name, place, use: "platform road", lengthMm, district, maxSpeedKmh: 90, ...more };
}

function staging(place: string, letter: string, district: string, side: string): Section[] {
  return [1, 2, 3, 4, 5, 6].map((road) => ({
    ...MAIN,
    code: `${letter}${road}`,
    name: `${side} staging, road ${road}`,
    place,
    use: "staging road",
    lengthMm: 2_400,
    district,
    handStaging: true,
  }));
}

/** Roads of the yard: several trains stand in one as long as they fit. */
function yard(code: string, name: string, lengthMm: number): Section {
  return {
    ...MAIN,
    code,
    name,
    place: "YARD",
    use: "yard",
    lengthMm,
    district: "D-Hesperwick",
    sharing: "shared",
    maxSpeedKmh: 50,
  };
}

/** From the west: staging, double line to the junction, single line beyond. Lengths in mm, speeds in prototype km/h. */
export const mainLineSections: Section[] = [
  ...staging("WEST", "W", "D-West", "West"),
  openLine("DW1", "Down line, west end", 4_200, "D-West", 90),
  openLine("DW2", "Down line to Hesperwick", 4_800, "D-Hesperwick", 90),
  openLine("UW1", "Up line from Hesperwick", 4_800, "D-Hesperwick", 90),
  openLine("UW2", "Up line, west end", 4_200, "D-West", 90),
  yard("HY1", "Hesperwick yard, road 1", 2_900),
  yard("HY2", "Hesperwick yard, road 2", 3_200),
  { ...yard("HD", "Hesperwick shed", 1_400), handStaging: true },
  platform("H1", "Hesperwick, platform 1 (down)", "HESP", 2_400, "D-Hesperwick"),
  platform("H2", "Hesperwick, platform 2 (up)", "HESP", 2_400, "D-Hesperwick"),
  platform("H3", "Hesperwick, platform 3 (loop)", "HESP", 2_200, "D-Hesperwick", { use: "loop" }),
  platform("H4", "Hesperwick, platform 4 (east bay)", "HESP", 1_600, "D-Hesperwick", {
    note: "No points to or from the west.",
  }),
  openLine("DJ1", "Down line from Hesperwick", 5_200, "D-Junction", 90),
  openLine("DJ2", "Down line to the junction", 4_600, "D-Junction", 90),
  openLine("UJ1", "Up line from the junction", 4_600, "D-Junction", 90),
  openLine("UJ2", "Up line to Hesperwick", 5_200, "D-Junction", 90),
  platform("V1", "Vennagate Junction, platform 1 (down)", "VENN", 2_400, "D-Junction"),
  platform("V2", "Vennagate Junction, platform 2 (up)", "VENN", 2_400, "D-Junction"),
  platform("V4", "Vennagate Junction, goods loop", "VENN", 2_600, "D-Junction", { use: "loop" }),
  openLine("SL1", "Single line, junction end", 5_400, "D-Junction", 80),
  openLine("SL2", "Single line to Pellaby", 5_000, "D-East", 80),
  platform("P1", "Pellaby, platform 1", "PELL", 2_000, "D-East", { use: "loop", mustClear: true }),
  platform("P2", "Pellaby, platform 2", "PELL", 1_700, "D-East", { use: "loop", mustClear: true }),
  {
    ...MAIN,
    code: "PX",
    name: "Pellaby, new loop",
    place: "PELL",
    use: "loop",
    lengthMm: 2_000,
    maxSpeedKmh: 80,
    note: "Track laid, points working, feeds not yet connected: no district.",
  },
  openLine("SL3", "Single line from Pellaby", 4_800, "D-East", 80),
  openLine("SL4", "Single line, east end", 5_200, "D-East", 80),
  ...staging("EAST", "E", "D-East", "East"),
];
