import type { Plant } from "./plant.ts";

/** Faults of how much is asked of one road. */
export const capacityPlants: readonly Plant[] = [
  {
    finding: "section-too-busy",
    adds: [
      {
        code: "8Y14",
        name: "A visitor's engine run in, up and down",
        engines: "",
        rakes: "",
        lengthMm: 150,
        calls: "E6/6:45 E6/6:50-11:45 E6/11:50",
        placedAt: "6:42",
        removedAt: "11:55",
      },
    ],
    what: "a visitor's engine is run in on staging road 6 nearly all morning",
    why: "the road is taken for more than three quarters of the session",
    shows: { sections: ["E6"] },
  },
];
