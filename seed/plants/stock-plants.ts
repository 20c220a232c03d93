import type { Plant } from "./plant.ts";

/** Too little of something: engines, coaches, handsets. */
export const stockPlants: readonly Plant[] = [
  {
    finding: "stock-elsewhere",
    working: "3G05",
    change: { engines: "2803" },
    what: "has the yard engine instead of its own",
    why: "the yard engine stands in the yard, the train starts from the west staging",
    shows: { trains: ["8Y02", "3G05"], locomotives: ["2803"] },
  },
  {
    finding: "stock-in-two-trains",
    working: "2S07",
    change: { rakes: "C1" },
    what: "has the cream express coaches",
    why: "they are still on their way west in 1A08",
    shows: { trains: ["1A08", "2S07"], rakes: ["C1"] },
  },
  {
    finding: "handsets-too-few",
    adds: [
      {
        code: "8Y11",
        name: "First visitor's engine, round the yard",
        engines: "",
        rakes: "",
        lengthMm: 150,
        calls: "HD/10:26 HY2/10:36",
        placedAt: "10:22",
        removedAt: "10:40",
      },
      {
        code: "8Y12",
        name: "Second visitor's engine, round the yard",
        engines: "",
        rakes: "",
        lengthMm: 150,
        calls: "HD/10:27 HY2/10:37",
        placedAt: "10:22",
        removedAt: "10:40",
      },
    ],
    what: "two visitors run their engines round the yard at the busiest time",
    why: "with them more trains are driven at once than there are handsets ready",
    shows: { commandSystems: ["club"] },
  },
];
