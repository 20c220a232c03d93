import { toLayoutTimeText } from "../../../shared/layout-time.ts";

/** How a slot's layout clock lies on real time. `startMs` and `endMs` are real ms since the session's start. */
export interface SlotFrame {
  readonly startMs: number;
  readonly endMs: number;
  readonly layoutStartSeconds: number;
  readonly clockRatio: number;
  /** Real instant of the session's start; null for a plan without a date. */
  readonly sessionStart: Date | null;
}

/** Real ms of a layout time, rounded to the nearest ms, halves up: design section 4. */
export function toRealMs(frame: SlotFrame, layoutSeconds: number): number {
  const layoutMs = (layoutSeconds - frame.layoutStartSeconds) * 1_000;
  return frame.startMs + Math.floor(layoutMs / frame.clockRatio + 0.5);
}

/** What the layout clock shows at a real instant, to the layout second. Before the timetable's midnight it shows 0:00. */
export function toLayoutText(frame: SlotFrame, ms: number): string {
  const seconds = frame.layoutStartSeconds + ((ms - frame.startMs) * frame.clockRatio) / 1_000;
  return toLayoutTimeText(Math.max(0, seconds));
}

/** The instant as RFC 3339 text in UTC; null for a plan without a date. */
export function toInstantText(frame: SlotFrame, ms: number): string | null {
  return frame.sessionStart === null ? null : new Date(frame.sessionStart.getTime() + ms).toISOString();
}
