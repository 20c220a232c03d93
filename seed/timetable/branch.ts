import { toWorkings, type Working, type WorkingRow } from "./working.ts";

/** The quay's own engine and coaches, between the branch bay and the quay. */
const SHUTTLES: readonly WorkingRow[] = [
  ["2B01", "Quay shuttle 1, out", "A21", "BR2", "V5/6:55 LM1/6:57:30-6:58 M1/7:02-7:05 T1/7:09"],
  ["2B02", "Quay shuttle 1, back", "A21", "BR2", "T1/7:22 M1/7:26-7:29 LM1/7:33-7:33:30 V5/7:36"],
  ["2B03", "Quay shuttle 2, out", "A21", "BR2", "V5/8:06 LM1/8:08:30-8:09 M1/8:13-8:16 T1/8:20"],
  ["2B04", "Quay shuttle 2, back", "A21", "BR2", "T1/8:34 M1/8:38-8:41 LM1/8:45-8:45:30 V5/8:48"],
  ["2B05", "Quay shuttle 3, out", "A21", "BR2", "V5/8:58 LM1/9:00:30-9:01 M1/9:05-9:08 T1/9:12"],
  ["2B06", "Quay shuttle 3, back", "A21", "BR2", "T1/10:30 M1/10:34-10:37 LM1/10:41-10:41:30 V5/10:44"],
  ["2B07", "Quay shuttle 4, out", "A21", "BR2", "V5/10:58 LM1/11:00:30-11:01 M1/11:05-11:08 T1/11:12"],
  ["2B08", "Quay shuttle 4, back", "A21", "BR2", "T1/11:40 M1/11:44-11:47 LM1/11:51-11:51:30 V5/11:54"],
];

/** Railcar between Hesperwick and Millorne. */
const RAILCAR: readonly WorkingRow[] = [
  ["2R01", "Millorne railcar 1, out", "R52", "", "H3/7:21 V3/7:25-7:28 LM2/7:30:30-7:34 M2/7:38"],
  ["2R02", "Millorne railcar 1, back", "R52", "", "M2/7:46 LM1/7:50-7:51 V3/7:54-7:58 H3/8:02"],
  ["2R03", "Millorne railcar 2, out", "R52", "", "H3/8:47 V3/8:51-8:54 LM2/8:56:30-8:57 M2/9:01"],
  ["2R04", "Millorne railcar 2, back", "R52", "", "M2/9:12 LM2/9:16-9:16:30 V3/9:19-9:23 H3/9:27"],
  ["2R05", "Millorne railcar 3, out", "R52", "", "H3/10:36 V3/10:40-10:47 LM2/10:49:30-10:50 M2/10:54"],
];

/** Through trains, pushed on the way back so that the engine need not run round in the bay. */
const THROUGH: readonly WorkingRow[] = [
  [
    "2T01",
    "Quay through train 1, out",
    "T31",
    "BR1",
    "H4/7:38 V3/7:42-7:47 LM2/7:49:30-7:51 M1/7:55-7:58 T2/8:02",
  ],
  [
    "2T02",
    "Quay through train 1, back",
    "T31/rear",
    "BR1",
    "T2/8:24 M2/8:28-8:31 LM2/8:35-8:35:30 V3/8:38-8:46 H4/8:50",
  ],
  [
    "2T03",
    "Quay through train 2, out",
    "T31",
    "BR1",
    "H4/9:40 V3/9:44-9:49 LM2/9:51:30-9:52 M2/9:56-9:59 T2/10:03",
  ],
  [
    "2T04",
    "Quay through train 2, back",
    "T31/rear",
    "BR1",
    "T2/10:16 M2/10:20-10:23 LM2/10:27-10:27:30 V3/10:30-10:32 H4/10:36",
  ],
  [
    "2T05",
    "Quay through train 3, out",
    "T31",
    "BR1",
    "H4/11:14 V3/11:18-11:22 LM2/11:24:30-11:26:30 M1/11:30:30-11:33:30 T2/11:37:30",
  ],
];

const BRANCH_GOODS: readonly WorkingRow[] = [
  ["3B01", "Fish empties, quay to junction", "A22", "BG1", "TQ/9:18 M1/9:24-9:28 LM1/9:34-9:34:30 V5/9:38"],
  ["3B02", "Branch goods, junction to Millorne", "A22", "BG1", "V5/10:04 LM1/10:07:30-10:08 MG/10:14"],
  ["3B03", "Branch goods, Millorne to quay", "A22", "BG1", "MG/10:40 TQ/10:46"],
];

export const branchWorkings: Working[] = [
  ...toWorkings(SHUTTLES, { priority: 3, earlierMinutes: 3, laterMinutes: 8, requires: ["branch"] }),
  ...toWorkings(RAILCAR, {
    priority: 5,
    earlierMinutes: 5,
    laterMinutes: 10,
    requires: ["main line", "branch"],
  }),
  ...toWorkings(THROUGH, {
    priority: 3,
    earlierMinutes: 5,
    laterMinutes: 10,
    requires: ["main line", "branch"],
  }),
  ...toWorkings(BRANCH_GOODS, { priority: 6, earlierMinutes: 10, laterMinutes: 20, requires: ["branch"] }),
];
