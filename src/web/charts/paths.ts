import { area, curveStepAfter, line } from "d3-shape";
import { type Curve, cutToWindow } from "./curve.ts";
import type { TimeWindow } from "./ticks.ts";

/** Turns a value of one axis into pixels. */
export type Scale = (value: number) => number;

const px = (n: number) => Math.round(n * 10) / 10;

/**
 * The steps of a curve that can be told apart at one pixel a column: of those that fall into one column the first, the
 * lowest, the highest and the last. The peak of every column stays, so no peak is lost.
 */
export function thin(steps: readonly [number, number][], x: Scale): [number, number][] {
  const kept: [number, number][] = [];
  let start = 0;
  while (start < steps.length) {
    const column = Math.floor(x(steps[start]?.[0] ?? 0));
    let end = start;
    let low = start;
    let high = start;
    for (; end < steps.length && Math.floor(x(steps[end]?.[0] ?? 0)) === column; end++) {
      if ((steps[end]?.[1] ?? 0) < (steps[low]?.[1] ?? 0)) low = end;
      if ((steps[end]?.[1] ?? 0) > (steps[high]?.[1] ?? 0)) high = end;
    }
    const order = [...new Set([start, low, high, end - 1])].sort((a, b) => a - b);
    for (const i of order) kept.push(steps[i] as [number, number]);
    start = end;
  }
  return kept;
}

function drawnSteps(curve: Curve, window: TimeWindow, x: Scale): [number, number][] {
  const steps = thin(cutToWindow(curve, window), x);
  const last = steps.at(-1);
  if (last) steps.push([window.toMs, last[1]]);
  return steps;
}

/** SVG path of a step curve over the window, drawn to the window's end. */
export function stepLine(curve: Curve, window: TimeWindow, x: Scale, y: Scale): string {
  const draw = line<[number, number]>(
    (step) => px(x(step[0])),
    (step) => px(y(step[1])),
  ).curve(curveStepAfter);
  return draw(drawnSteps(curve, window, x)) ?? "";
}

/** The area between a step curve and `base`; where the curve is below the base, nothing. */
export function stepArea(curve: Curve, base: number, window: TimeWindow, x: Scale, y: Scale): string {
  const draw = area<[number, number]>(
    (step) => px(x(step[0])),
    px(y(base)),
    (step) => px(y(Math.max(base, step[1]))),
  ).curve(curveStepAfter);
  return draw(drawnSteps(curve, window, x)) ?? "";
}

/** A polyline through the bends; empty for fewer than two. */
export function bendLine(points: readonly (readonly [number, number])[], x: Scale, y: Scale): string {
  if (points.length < 2) return "";
  return `M${points.map(([ms, mm]) => `${px(x(ms))},${px(y(mm))}`).join("L")}`;
}

/** A rectangle as path data, so that any number of equal-looking ones make one element. */
export function rectangle(left: number, top: number, width: number, height: number): string {
  return `M${px(left)},${px(top)}h${px(Math.max(width, 0.6))}v${px(height)}h${px(-Math.max(width, 0.6))}z`;
}
