import type { z } from "zod";
import type { planDocument } from "../../../shared/documents.ts";
import type { SectionUse } from "../../../shared/vocabulary.ts";

function section(code: string, place: string | null, use: SectionUse, lengthMm: number) {
  return {
    code,
    name: `Section ${code}`,
    area: "main",
    place,
    use,
    lengthMm,
    wiring: "digital",
    district: "D1",
  } as const;
}

/**
 * A small whole plan: one digital train over five sections, calling at a station. It is the example of the API's
 * reference page, and at scale 87, ratio 4 and 1,200 mm of train the worked example of design section 4.
 */
export const examplePlan: z.input<typeof planDocument> = {
  scale: 87,
  policy: { setUpSeconds: 5, releaseSeconds: 5 },
  layout: {
    areas: [{ code: "main", name: "Main line" }],
    places: [
      { code: "west", name: "West yard" },
      { code: "mid", name: "Middle halt" },
      { code: "east", name: "East yard" },
    ],
    lines: [
      {
        code: "main",
        name: "Main line",
        stops: [
          { place: "west", atMm: 0 },
          { place: "mid", atMm: 4_800 },
          { place: "east", atMm: 10_800 },
        ],
      },
    ],
    commandSystems: [{ code: "digital", name: "Digital system" }],
    supplies: [{ code: "S1", name: "Supply one", commandSystem: "digital", ratingMa: 3_000 }],
    districts: [{ code: "D1", name: "District one", supply: "S1", breakerMa: 2_500 }],
    sections: [
      section("W1", "west", "staging road", 2_400),
      section("L1", null, "line", 3_000),
      section("B1", "mid", "platform road", 1_800),
      section("L2", null, "line", 3_600),
      section("E1", "east", "staging road", 2_400),
    ],
    links: [
      { code: "W1-L1", from: "W1", to: "L1" },
      { code: "L1-B1", from: "L1", to: "B1" },
      { code: "B1-L2", from: "B1", to: "L2" },
      { code: "L2-E1", from: "L2", to: "E1" },
    ],
  },
  roster: {
    locomotives: [
      {
        code: "E7",
        name: "Goods engine",
        lengthMm: 200,
        running: { ma: 350, source: "measured" },
        standing: { ma: 80, source: "measured" },
        stall: { ma: 900, source: "leaflet" },
        inrush: { ma: 600, source: "rule of thumb" },
      },
    ],
    decoders: [{ code: "E7-decoder", locomotive: "E7", addressKind: "short", address: 7 }],
    rakes: [{ code: "R1", name: "Ten wagons", lengthMm: 1_000, vehicles: 10 }],
  },
  handsets: [{ code: "H1", name: "Handset one", commandSystem: "digital", kind: "radio" }],
  trains: [
    {
      code: "101",
      name: "Morning goods",
      motivePower: [{ locomotive: "E7" }],
      rakes: ["R1"],
      path: [
        { section: "W1", depart: "10:00" },
        { section: "L1" },
        { section: "B1", arrive: "10:04", depart: "10:06" },
        { section: "L2" },
        { section: "E1", arrive: "10:10" },
      ],
    },
  ],
  slot: {
    layoutStart: "10:00",
    layoutEnd: "11:00",
    clockRatio: 4,
    areas: [{ area: "main", control: "digital" }],
  },
};
