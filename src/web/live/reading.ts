import { parseLayoutTime, toLayoutTimeText } from "../../../shared/layout-time.ts";
import type { NightClock } from "../../../shared/night.ts";

type Clock = Pick<NightClock, "state" | "layoutSeconds" | "clockRatio">;

/** What the layout clock shows `elapsedMs` of real time after the service said what it showed. */
export function readingAfter({ state, layoutSeconds, clockRatio }: Clock, elapsedMs: number): number {
  return state === "running" ? layoutSeconds + (elapsedMs / 1_000) * clockRatio : layoutSeconds;
}

/** `10:32` and `:07` apart, so that the face can show the seconds smaller; the second that has begun. */
export function faceOf(layoutSeconds: number): { readonly minutes: string; readonly seconds: string } {
  const whole = Math.max(0, Math.floor(layoutSeconds));
  return {
    minutes: toLayoutTimeText(whole - (whole % 60)),
    seconds: `:${String(whole % 60).padStart(2, "0")}`,
  };
}

/** Whole real minutes from now to a layout time, rounded down; negative once it is past. */
export function realMinutesTo(layout: string, nowSeconds: number, clockRatio: number): number {
  return Math.floor((parseLayoutTime(layout) - nowSeconds) / clockRatio / 60);
}

const DAY_MIN = 1_440;

/** `3 days`, `2 h 10 min`, `2 h`, `35 min`: from two days on nobody counts hours. */
export function span(minutes: number): string {
  if (minutes < 60) return `${minutes} min`;
  if (minutes >= 2 * DAY_MIN) return `${Math.floor(minutes / DAY_MIN)} days`;
  const rest = minutes % 60;
  return `${Math.floor(minutes / 60)} h${rest === 0 ? "" : ` ${rest} min`}`;
}

/** `in 3 min`, `now`, `2 min ago`: how far off it is in the room. */
export function farOff(minutes: number): string {
  if (minutes > 0) return `in ${span(minutes)}`;
  return minutes >= -1 ? "now" : `${span(-minutes)} ago`;
}
