import { scaleLinear } from "d3-scale";
import { toLayoutTimeText } from "../../../shared/layout-time.ts";
import type { Clocks } from "./clocks.ts";

/** A half-open stretch of the time axis, in ms since the session's start. */
export interface TimeWindow {
  readonly fromMs: number;
  readonly toMs: number;
}

export interface Tick {
  readonly at: number;
  readonly label: string;
}

const SECONDS_A_DAY = 86_400;
/** Steps that read well on a clock, in seconds: from 10 seconds to half a day; beyond come whole days. */
const CLOCK_STEPS = [10, 30, 60, 120, 300, 600, 900, 1_200, 1_800, 3_600, 7_200, 10_800, 21_600, 43_200];

/** The finest step that puts at most `most` ticks over `seconds`. */
function clockStep(seconds: number, most: number): number {
  const step = CLOCK_STEPS.find((s) => seconds / s <= most);
  return step ?? Math.ceil(seconds / most / SECONDS_A_DAY) * SECONDS_A_DAY;
}

/**
 * Ticks at round readings of the layout clock inside the window, at most about `most` of them; `at` is in ms.
 */
export function layoutTicks(window: TimeWindow, clocks: Clocks, most: number): Tick[] {
  const first = clocks.toLayoutSeconds(window.fromMs);
  const last = clocks.toLayoutSeconds(window.toMs);
  const step = clockStep(last - first, Math.max(1, most));
  const ticks: Tick[] = [];
  for (let s = Math.ceil(first / step - 1e-9) * step; s <= last + 1e-9; s += step)
    ticks.push({ at: clocks.toMs(s), label: s < 0 ? "" : toLayoutTimeText(s) });
  return ticks;
}

/**
 * Ticks at round stretches of real time from the session's start, labelled by the room clock. Full minutes only, so
 * that they read well wherever a session starts on a full five minutes.
 */
export function roomTicks(window: TimeWindow, clocks: Clocks, most: number): Tick[] {
  const step = Math.max(60, clockStep((window.toMs - window.fromMs) / 1_000, Math.max(1, most))) * 1_000;
  const ticks: Tick[] = [];
  for (let ms = Math.ceil(window.fromMs / step) * step; ms <= window.toMs; ms += step)
    ticks.push({ at: ms, label: clocks.roomMinuteText(ms) });
  return ticks;
}

/** Round values from 0 to `top`, at most about `most` of them. Whole numbers only where `whole`. */
export function valueTicks(top: number, most: number, whole = false): number[] {
  const ticks = scaleLinear().domain([0, top]).ticks(most);
  return whole ? ticks.filter(Number.isInteger) : ticks;
}
