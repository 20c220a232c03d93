import type { Plant } from "./plant.ts";

/** Faults on the digital supply. */
export const powerPlants: readonly Plant[] = [
  {
    finding: "district-will-trip",
    working: "3G04",
    change: { engines: "2801 V12", placedAt: "8:59", removedAt: "9:40" },
    what: "has the vintage engine Celandine as a second engine",
    why: "with what else stands and moves in the district its breaker lets go",
    shows: { districts: ["D-East"] },
  },
  {
    finding: "district-too-close",
    working: "3G08",
    change: { calls: "HY1/10:52 W2/10:58:30" },
    what: "leaves thirteen minutes earlier",
    why: "it then runs while 1A07 and 1V02 call at Hesperwick and the yard is shunted: the district's reserve is gone",
    shows: { districts: ["D-Hesperwick"] },
  },
  {
    finding: "supply-over-rating",
    adds: [
      {
        code: "0V13",
        name: "Speedwell light to the yard",
        engines: "V13",
        rakes: "",
        calls: "W1/10:56 HY2/11:07:15",
        placedAt: "10:50",
        removedAt: "11:10",
      },
    ],
    what: "Speedwell runs light to the yard while 1V02 comes the other way",
    why: "both pass from one district to the other at once: each bears it, their booster does not",
    shows: { supplies: ["B-West"] },
  },
  {
    finding: "supply-too-close",
    working: "1V01",
    change: { calls: "W5/8:29 H1/8:33:30-8:37 V1/8:42-8:44 P1/8:49-8:51 E4/8:56", placedAt: "8:14" },
    what: "runs six minutes earlier",
    why: "it then passes from one district to the other while the junction's trains run: the booster's reserve is gone",
    shows: { supplies: ["B-East"] },
  },
  {
    finding: "district-trips-on-stall",
    adds: [
      {
        code: "8Y13",
        name: "Tamarisk round the yard",
        engines: "V14",
        rakes: "",
        calls: "HD/8:41 HY2/8:51",
        placedAt: "8:38",
        removedAt: "8:53",
      },
    ],
    what: "a visitor's engine without a motor limit runs round the yard while 1V01 and 2S04 call",
    why: "if its wheels were held, the district's breaker would open",
    shows: { districts: ["D-Hesperwick"], locomotives: ["V14"] },
  },
  {
    finding: "district-trips-on-restart",
    adds: [
      {
        code: "1X01",
        name: "Visiting saloons on trial",
        engines: "V15",
        rakes: "CX",
        calls: "E1/6:40 P2/6:44:30 V2/6:49",
        removedAt: "7:00",
      },
    ],
    what: "two saloons with large capacitors run through the junction",
    why: "after a trip there all of it comes up at once, and this breaker opens before the surge is over",
    shows: { districts: ["D-Junction"], trains: ["1A01", "1X01", "3G02"] },
  },
];
