import { branchWorkings } from "./branch.ts";
import { goodsWorkings } from "./goods.ts";
import { mainLineWorkings } from "./main-line.ts";
import type { Working } from "./working.ts";

/** The timetable that runs: 6:40 to 12:00 by the layout clock. */
export const cleanWorkings: readonly Working[] = [...mainLineWorkings, ...goodsWorkings, ...branchWorkings];
