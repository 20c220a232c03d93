import type { z } from "zod";
import type { train } from "../../shared/timetable.ts";
import { toPath } from "./route.ts";

type Train = z.input<typeof train>;

/** A train as the timetable clerk writes it on one line. */
export interface Working {
  readonly code: string;
  readonly name: string;
  /** Engines from the front, by a space; `T31/rear` pushes. */
  readonly engines: string;
  /** Rakes, by a space; empty for none. */
  readonly rakes: string;
  /** Calls: `W1/6:50 H1/6:54-6:56 V1/7:00 E1/7:09`; see toPath. */
  readonly calls: string;
  /** Where it is not the sum of its stock. */
  readonly lengthMm?: number;
  readonly priority?: number;
  readonly earlierMinutes?: number;
  readonly laterMinutes?: number;
  readonly requires?: readonly string[];
  readonly placedAt?: string;
  readonly removedAt?: string;
  readonly note?: string;
}

const words = (text: string) => text.split(" ").filter((word) => word !== "");

/** The train record of a working. */
export function toTrain({ engines, rakes, calls, requires = [], ...rest }: Working): Train {
  return {
    ...rest,
    requires: [...requires],
    motivePower: words(engines).map((engine) => {
      const [locomotive = "", at] = engine.split("/");
      return { locomotive, position: at === "rear" ? "rear" : "head" };
    }),
    rakes: words(rakes),
    path: toPath(calls),
  };
}

export type WorkingRow = readonly [
  code: string,
  name: string,
  engines: string,
  rakes: string,
  calls: string,
  more?: Partial<Working>,
];

/** Workings of one kind: what they share is said once. */
export function toWorkings(rows: readonly WorkingRow[], shared: Partial<Working>): Working[] {
  return rows.map(([code, name, engines, rakes, calls, more]) => ({
    code,
    name,
    engines,
    rakes,
    calls,
    ...shared,
    ...more,
  }));
}
