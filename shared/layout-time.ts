const SECONDS_A_DAY = 86_400;

/** 99:59:59, the last reading of the layout clock that can be written without naming the day. */
export const LAST_LAYOUT_SECOND = 359_999;

/** Layout seconds since the timetable's midnight of a text that `layoutTime` accepts: `25:10` and `1:10+1` are 90 600. */
export function parseLayoutTime(text: string): number {
  const [clock = "", days = "0"] = text.split("+");
  const [hours = 0, minutes = 0, seconds = 0] = clock.split(":").map(Number);
  return Number(days) * SECONDS_A_DAY + hours * 3_600 + minutes * 60 + seconds;
}

/** The same instant as people of the trade write it: `9:05`, `25:10`, with seconds only where they are not 0. */
export function toLayoutTimeText(layoutSeconds: number): string {
  const whole = Math.round(layoutSeconds);
  const two = (n: number) => String(n).padStart(2, "0");
  const seconds = whole % 60;
  const text = `${two(Math.floor(whole / 3_600))}:${two(Math.floor(whole / 60) % 60)}`;
  return seconds === 0 ? text : `${text}:${two(seconds)}`;
}
