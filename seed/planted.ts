import { analogPlants } from "./plants/analog-plants.ts";
import { capacityPlants } from "./plants/capacity-plants.ts";
import { decoderPlants } from "./plants/decoder-plants.ts";
import type { Plant } from "./plants/plant.ts";
import { powerPlants } from "./plants/power-plants.ts";
import { stockPlants } from "./plants/stock-plants.ts";
import { trackPlants } from "./plants/track-plants.ts";
import type { Working } from "./timetable/working.ts";

/** Every finding that the check can be led to, planted once. Each shows alone, and all show together. */
export const plants: readonly Plant[] = [
  ...trackPlants,
  ...stockPlants,
  ...analogPlants,
  ...powerPlants,
  ...capacityPlants,
  ...decoderPlants,
];

/** The clean timetable with the given plants in it. */
export function plantInto(clean: readonly Working[], planted: readonly Plant[]): Working[] {
  const changed = clean.map((working) => {
    const own = planted.filter((plant) => plant.working === working.code);
    const notes = own.map((plant) => `Planted, ${plant.finding}: ${plant.what}.`);
    return own.length === 0
      ? working
      : Object.assign({}, working, ...own.map((plant) => plant.change), { note: notes.join(" ") });
  });
  const added = planted.flatMap((plant) =>
    (plant.adds ?? []).map((working) => ({ ...working, note: `Planted, ${plant.finding}: ${plant.what}.` })),
  );
  return [...changed, ...added];
}
