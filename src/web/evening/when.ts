import type { EveningItem } from "../../../shared/claims.ts";
import type { Night, NightTrain } from "../../../shared/night.ts";
import { realMinutesTo } from "../live/reading.ts";

/** An item of the evening with how the night stands. */
export interface Due {
  readonly item: EveningItem;
  /** The train as it is tonight; null for a duty, and before the night is run. */
  readonly tonight: NightTrain | null;
  /** Whole real minutes until it begins; negative once it has. */
  readonly minutes: number;
  readonly isOver: boolean;
}

/**
 * How far off each item is. By the layout clock where it has been started for the item's slot, since a pause shifts
 * everything after it; else by the room's clock, as planned.
 * @param nowSeconds what the layout clock shows
 * @param nowMs the room's clock
 */
export function dueOf(item: EveningItem, night: Night | null, nowSeconds: number, nowMs: number): Due {
  const { kind, slot, code } = item.claim;
  const tonight =
    kind === "train" ? (night?.trains.find((t) => t.slot === slot && t.train === code) ?? null) : null;
  const byClock = night !== null && night.clock.slot === slot && night.clock.state !== "not started";
  if (tonight && byClock)
    return {
      item,
      tonight,
      minutes: realMinutesTo(tonight.from.expectedLayout, nowSeconds, night.clock.clockRatio),
      isOver: tonight.state === "arrived" || tonight.state === "left out",
    };
  return {
    item,
    tonight,
    minutes: Math.floor((Date.parse(item.from.at) - nowMs) / 60_000),
    isOver: tonight?.state === "arrived" || nowMs >= Date.parse(item.handInAt),
  };
}
