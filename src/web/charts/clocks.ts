import { parseLayoutTime, toLayoutTimeText } from "../../../shared/layout-time.ts";

/** What the two clocks of a slot need: where both stand at its start, and how fast one runs against the other. */
export interface ClockSetting {
  readonly startMs: number;
  readonly layoutStart: string;
  /** Real instant of `startMs`, ISO with offset; none for a plan without a date. */
  readonly startsAt: string | null;
  readonly clockRatio: number;
  /** IANA zone of the club room. */
  readonly timeZone: string;
}

/** The layout clock and the room clock over one axis: ms of real time since the session's start. */
export interface Clocks {
  toLayoutSeconds(ms: number): number;
  /** Nearest whole ms. */
  toMs(layoutSeconds: number): number;
  /** The nearest whole layout second, in ms: what an address can hold. */
  snap(ms: number): number;
  /** `19:42:10`, to the nearest whole layout second. */
  layoutText(ms: number): string;
  /** `20:55:32` in the club's zone, or `+1:25:32` from the start for a plan without a date. */
  roomText(ms: number): string;
  /** As `roomText`, without the seconds. */
  roomMinuteText(ms: number): string;
}

/** The hour of a stretch since the start, `+1:25:32`. */
function sinceStart(ms: number): string {
  const seconds = Math.floor(Math.abs(ms) / 1_000);
  const two = (n: number) => String(n).padStart(2, "0");
  const sign = ms < 0 ? "−" : "+";
  return `${sign}${Math.floor(seconds / 3_600)}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
}

function layoutClockText(layoutSeconds: number): string {
  const whole = Math.round(layoutSeconds);
  return whole < 0 ? `−${toLayoutTimeText(-whole)}` : toLayoutTimeText(whole);
}

export function createClocks(setting: ClockSetting): Clocks {
  const layoutStart = parseLayoutTime(setting.layoutStart);
  const roomStart = setting.startsAt === null ? null : Date.parse(setting.startsAt);
  const format = (options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat("en-GB", { ...options, timeZone: setting.timeZone, hourCycle: "h23" });
  const withSeconds = format({ hour: "2-digit", minute: "2-digit", second: "2-digit" });
  const withMinutes = format({ hour: "2-digit", minute: "2-digit" });

  const toLayoutSeconds = (ms: number) => layoutStart + ((ms - setting.startMs) * setting.clockRatio) / 1_000;
  const toMs = (seconds: number) =>
    Math.round(setting.startMs + ((seconds - layoutStart) * 1_000) / setting.clockRatio);
  const room = (ms: number, show: Intl.DateTimeFormat) =>
    roomStart === null
      ? sinceStart(ms - setting.startMs)
      : show.format(new Date(roomStart + ms - setting.startMs));

  return {
    toLayoutSeconds,
    toMs,
    snap: (ms) => toMs(Math.round(toLayoutSeconds(ms))),
    layoutText: (ms) => layoutClockText(toLayoutSeconds(ms)),
    roomText: (ms) => room(ms, withSeconds),
    roomMinuteText: (ms) => room(ms, withMinutes),
  };
}
