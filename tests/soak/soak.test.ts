import { expect, it } from "vitest";
import { BLOWS, soak } from "./soak.ts";

const SMALL = { members: 24, lanes: 4, turns: 3, processes: 2, posts: 400, seed: 3 };

/** The whole of it is `npm run soak`. */
it.each(BLOWS)(
  "keeps every claim it accepted and books nothing twice with %s killed in the middle",
  async (blow) => {
    const { faults, entries } = await soak(SMALL, blow);
    expect(faults).toEqual([]);
    const times = (act: string, status: number) =>
      entries.filter((entry) => entry.act === act && entry.status === status).length;
    // else it has looked at nothing
    expect(times("claim", 201)).toBeGreaterThan(12);
    expect(times("claim", 409)).toBeGreaterThan(50);
    expect(times("give-back", 200)).toBeGreaterThan(5);
  },
  180_000,
);
