import { toWorkings, type Working, type WorkingRow } from "./working.ts";

const GOODS: readonly WorkingRow[] = [
  ["3G02", "Night goods up", "2802", "G2", "E5/6:46 P1/6:52:30 V4/6:59 HY2/7:05:30"],
  ["3G01", "Mineral empties, west to yard", "2801", "G1", "W5/7:00 HY1/7:06:30"],
  [
    "3G03",
    "Mineral empties, yard to east",
    "2801",
    "G1",
    "HY1/7:48 V4/7:54:30-7:57 P1/8:03:30-8:10 E5/8:16:30",
  ],
  [
    "3G04",
    "Mineral loads, east to yard",
    "2801",
    "G1",
    "E5/9:04 P1/9:10:30-9:17 V4/9:23:30-9:26 HY1/9:32:30",
  ],
  ["3G06", "Mixed goods, yard to west", "2802", "G2", "HY2/9:46 W3/9:52:30"],
  ["3G07", "Tank wagons, west to yard", "D203", "G3", "W1/10:24 HY2/10:31", { placedAt: "10:10" }],
  ["3G08", "Mineral loads, yard to west", "2801", "G1", "HY1/11:05 W2/11:11:30"],
  ["3G05", "Mixed goods, west to yard", "2802", "G2", "W3/11:25 HY2/11:31:30"],
];

const PILOT: readonly WorkingRow[] = [
  [
    "8Y01",
    "Yard shunting, early turn",
    "2803",
    "",
    "HD/7:15 HY1/7:20-7:35 HY2/7:45-8:00 HY1/8:10-8:20 HY2/8:30",
  ],
  [
    "8Y02",
    "Yard shunting, late turn",
    "2803",
    "",
    "HY2/9:40 HY1/9:50-10:05 HY2/10:15-10:30 HY1/10:40-10:47 HY2/10:57",
  ],
];

export const goodsWorkings: Working[] = [
  ...toWorkings(GOODS, { priority: 6, earlierMinutes: 5, laterMinutes: 15, requires: ["main line"] }),
  ...toWorkings(PILOT, { priority: 8, laterMinutes: 20, requires: ["yard"] }),
];
