import { toWorkings, type Working, type WorkingRow } from "./working.ts";

/** Odd numbers run down, to the east; even ones up, to the west. Times are layout time. */
const EXPRESSES: readonly WorkingRow[] = [
  ["1A01", "First express down", "4601", "C1", "W1/6:50 H1/6:54-6:56 V1/7:00 P1/7:04:30 E1/7:09"],
  ["1A02", "First express up", "D201", "C3", "E2/7:15 P2/7:19:30 V2/7:24 H2/7:28-7:30 W2/7:34"],
  ["1A04", "Market express up", "4601", "C1", "E1/8:00 P2/8:04:30 V2/8:09 H2/8:13-8:15 W1/8:19"],
  ["1A03", "Market express down", "D201", "C3", "W2/8:20 H1/8:24-8:26 V1/8:30 P1/8:34:30 E2/8:39"],
  ["1A05", "Coast express down", "4601", "C1", "W1/9:20 H1/9:24-9:26 V1/9:30 P1/9:34:30 E1/9:39"],
  ["1A06", "Coast express up", "D201", "C3", "E2/9:42 P2/9:46:30 V2/9:51 H2/9:55-9:57 W2/10:01"],
  [
    "1A07",
    "Noon express down",
    "D201",
    "C3",
    "W2/10:50 H1/10:54-10:56 V1/11:00 P1/11:04:30-11:07:30 E3/11:12",
  ],
  [
    "1A08",
    "Noon express up",
    "4601",
    "C1",
    "E1/11:01:30 P2/11:06 V2/11:10:30 H2/11:14:30-11:16:30 W1/11:20:30",
  ],
];

const STOPPING: readonly WorkingRow[] = [
  [
    "2S01",
    "Workers' train down",
    "4602",
    "C2",
    "W3/7:10 H1/7:14:30-7:17 V1/7:22-7:26 P1/7:31-7:32:30 E3/7:37",
  ],
  [
    "2S02",
    "Workers' train up",
    "4603",
    "C4",
    "E4/7:41 P2/7:46-7:47:30 V2/7:52:30-7:54 H2/7:58:30-8:01 W4/8:05:30",
  ],
  ["2S04", "School train up", "4602", "C2", "E3/8:26 P2/8:31-8:36 V2/8:41-8:42:30 H2/8:47-8:49:30 W3/8:54"],
  [
    "2S03",
    "Shoppers' train down",
    "4603",
    "C4",
    "W4/8:55 H1/8:59:30-9:02 V1/9:07-9:08:30 P2/9:13:30-9:15 E3/9:20",
  ],
  [
    "2S05",
    "Mid-morning stopping train down",
    "4602",
    "C2",
    "W3/9:35 H1/9:39:30-9:43 V1/9:48-9:53 P1/9:58-10:00 E2/10:05",
  ],
  [
    "2S06",
    "Mid-morning stopping train up",
    "4603",
    "C4",
    "E3/10:08 P2/10:13-10:14:30 V2/10:19:30-10:21 H2/10:25:30-10:28 W4/10:32:30",
  ],
  [
    "2S07",
    "Late-morning stopping train down",
    "4603",
    "C4",
    "W4/11:12 H1/11:16:30-11:19 V1/11:24-11:28 P1/11:33-11:34:30 E4/11:39:30",
  ],
  [
    "2S08",
    "Late-morning stopping train up",
    "4602",
    "C2",
    "E2/11:15 P2/11:20-11:21:30 V2/11:26:30-11:28 H2/11:32:30-11:35 W6/11:39:30",
  ],
];

const SPECIALS: readonly WorkingRow[] = [
  [
    "1V01",
    "Marigold excursion out",
    "V11",
    "C6",
    "W5/8:35 H1/8:39:30-8:43 V1/8:48-8:50 P1/8:55-8:57 E4/9:02",
    { placedAt: "8:20" },
  ],
  [
    "1V02",
    "Marigold excursion home",
    "V11",
    "C6",
    "E4/10:36 P2/10:41-10:42:30 V2/10:48-10:50 H2/10:54:30-10:58 W5/11:02:30",
  ],
];

const MAILS: readonly WorkingRow[] = [
  ["1M01", "Mail down", "D202", "M1", "W6/10:05 H1/10:09-10:15 V1/10:22 P1/10:26:30 E5/10:31"],
  ["1M02", "Mail up", "D202", "M1", "E5/11:40 P2/11:44:30 V2/11:49 H2/11:53"],
];

export const mainLineWorkings: Working[] = [
  ...toWorkings(EXPRESSES, { priority: 2, laterMinutes: 5, requires: ["main line"] }),
  ...toWorkings(STOPPING, { priority: 4, earlierMinutes: 3, laterMinutes: 10, requires: ["main line"] }),
  ...toWorkings(SPECIALS, { priority: 7, earlierMinutes: 10, laterMinutes: 15, requires: ["main line"] }),
  ...toWorkings(MAILS, { priority: 1, laterMinutes: 5, requires: ["main line"] }),
];
