import type { Plant } from "./plant.ts";

/** Faults on the branch's controllers. */
export const analogPlants: readonly Plant[] = [
  {
    finding: "output-none-reaches",
    working: "3B01",
    change: { calls: "TQ/9:18 M1/9:24-9:25 LM1/9:34-9:34:30 V5/9:38" },
    what: "stands one minute at Millorne instead of four",
    why: "too short to change outputs, and none reaches from the quay road to the branch bay",
    shows: { trains: ["3B01"] },
  },
  {
    finding: "outputs-too-few",
    working: "2T01",
    change: { calls: "H4/7:32 V3/7:36-7:41 LM2/7:43:30-7:51 M1/7:55-7:58 T2/8:02" },
    what: "goes onto the branch six minutes earlier",
    why: "two trains are already on outputs A and B, the only ones for the upper branch",
    shows: { trains: ["2B02", "2R01", "2T01"] },
  },
  {
    finding: "output-over-rating",
    working: "3B02",
    change: { engines: "A22 A23", placedAt: "9:58" },
    what: "has the saddle tank as a second engine",
    why: "together they draw more than output A is rated for, the only one that reaches the branch bay",
    shows: { trains: ["3B02"], outputs: ["A"] },
  },
  {
    finding: "output-too-close",
    adds: [
      {
        code: "8B32",
        name: "Visiting coaches to Millorne",
        engines: "T32",
        rakes: "CB",
        calls: "LM2/6:44 M2/6:50",
        removedAt: "6:53",
      },
    ],
    what: "the green tank engine takes four coaches with bulbs to Millorne",
    why: "engine and bulbs together take output B's reserve, the only one that reaches both ends",
    shows: { trains: ["8B32"], outputs: ["B"] },
  },
  {
    finding: "output-trips-on-stall",
    adds: [
      {
        code: "8B20",
        name: "Bittern light to Millorne",
        engines: "V20",
        rakes: "",
        calls: "T3/8:46 MG/8:52",
        placedAt: "8:40",
        removedAt: "8:54",
      },
    ],
    what: "a visitor's engine without a motor limit runs light from the quay to Millorne",
    why: "if its wheels were held, output C, which bears it as it runs, would have to give more than it can",
    shows: { outputs: ["C"], locomotives: ["V20"] },
  },
  {
    finding: "controller-over-rating",
    working: "2B08",
    change: { calls: "T1/11:13:30 M1/11:17:30-11:20:30 LM1/11:24:30-11:25:30 V5/11:28" },
    what: "comes back early and meets 2T05 at Larkmoss",
    why: "each output bears its train, but both move at once and the transformer behind them gives less",
    shows: { controllers: ["Junction"] },
  },
  {
    finding: "controller-too-close",
    working: "2T05",
    change: { engines: "T33", placedAt: "11:09" },
    what: "has the red tank engine instead of the black",
    why: "with the quay lights it takes the reserve of the quay's transformer",
    shows: { controllers: ["Quay"] },
  },
];
