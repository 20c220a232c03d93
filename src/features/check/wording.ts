/** `a`, `a and b`, `a, b and c`; beyond `most`: `a, b, c and 5 more`. */
export function listed(items: readonly string[], most = 4): string {
  if (items.length <= 1) return items[0] ?? "";
  if (items.length > most)
    return `${items.slice(0, most - 1).join(", ")} and ${items.length - most + 1} more`;
  return `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`;
}

/** `section L1`, `sections L1 and L2`. */
export function counted(noun: string, items: readonly string[], plural = `${noun}s`): string {
  return `${items.length === 1 ? noun : plural} ${listed(items)}`;
}

/** mA as people read amps: `2.90 A`, below an ampere `450 mA`; with `more` places than that. */
export function amps(ma: number, more = 0): string {
  return ma < 1_000 ? `${ma.toFixed(more)} mA` : `${(ma / 1_000).toFixed(2 + more)} A`;
}

/** Real ms as `38 s` or `2 min 5 s`; tenths below ten seconds. */
export function duration(ms: number): string {
  const seconds = ms / 1_000;
  if (seconds < 10) return `${Number(seconds.toFixed(1))} s`;
  const whole = Math.round(seconds);
  const rest = whole % 60;
  if (whole < 60) return `${whole} s`;
  return rest === 0 ? `${whole / 60} min` : `${Math.floor(whole / 60)} min ${rest} s`;
}

/** `1 handset`, `3 handsets`. */
export function number(n: number, noun: string, plural = `${noun}s`): string {
  return `${n} ${n === 1 ? noun : plural}`;
}

/** A share as `82 %`; tenths where it is not whole, and `more` places than that. */
export function percent(share: number, more = 0): string {
  return `${Number((share * 100).toFixed(1 + more))} %`;
}

/** Volts as `13.4 V`, two decimals below one; with `more` places than that. */
export function volts(value: number, more = 0): string {
  return `${value.toFixed((value < 1 ? 2 : 1) + more)} V`;
}

/** Finer than any figure of a finding is. */
const MOST_MORE = 4;

/** Two figures with as many places as it takes to tell them apart: what is above its limit does not read as equal to it. */
export function apart(
  a: number,
  b: number,
  write: (value: number, more: number) => string,
): readonly [string, string] {
  let more = 0;
  while (a !== b && more < MOST_MORE && write(a, more) === write(b, more)) more++;
  return [write(a, more), write(b, more)];
}
