import type { CheckReport } from "../../../shared/check.ts";
import type { Clocks } from "../charts/clocks.ts";
import type { TimeWindow } from "../charts/ticks.ts";

/** Nobody needs to look closer than this; in ms of real time. */
const NARROWEST_MS = 20_000;

/**
 * Everything the pictures can show: from the slot's start, or the first graph line before it, to the slot's end or
 * the last one after it; out to whole layout seconds, which an address can hold.
 */
export function wholeWindow(
  { slot, graph }: Pick<CheckReport, "slot" | "graph">,
  clocks: Clocks,
): TimeWindow {
  let fromMs = slot.startMs;
  let toMs = slot.endMs;
  for (const line of graph)
    for (const { points } of line.trains) {
      fromMs = Math.min(fromMs, points[0]?.[0] ?? fromMs);
      toMs = Math.max(toMs, points.at(-1)?.[0] ?? toMs);
    }
  return {
    fromMs: clocks.toMs(Math.floor(clocks.toLayoutSeconds(fromMs))),
    toMs: clocks.toMs(Math.ceil(clocks.toLayoutSeconds(toMs))),
  };
}

/** A wish for a window made possible: not narrower than people can use, and inside the whole. */
export function fitWindow(wish: TimeWindow, whole: TimeWindow): TimeWindow {
  const most = whole.toMs - whole.fromMs;
  const width = Math.min(most, Math.max(NARROWEST_MS, wish.toMs - wish.fromMs));
  const middle = (wish.fromMs + wish.toMs) / 2;
  const fromMs = Math.min(whole.toMs - width, Math.max(whole.fromMs, middle - width / 2));
  return { fromMs, toMs: fromMs + width };
}

/** A window that has lost the moment is shifted until the moment is in its middle, not widened. */
export function keepInside(moment: number, window: TimeWindow, whole: TimeWindow): TimeWindow {
  if (moment >= window.fromMs && moment <= window.toMs) return window;
  const half = (window.toMs - window.fromMs) / 2;
  return fitWindow({ fromMs: moment - half, toMs: moment + half }, whole);
}
