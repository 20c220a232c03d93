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

/** mA as people read amps: `2.90 A`, below an ampere `450 mA`. */
export function amps(ma: number): string {
  return ma < 1_000 ? `${Math.round(ma)} mA` : `${(ma / 1_000).toFixed(2)} A`;
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

/** A share as `82 %`; tenths where it is not whole. */
export function percent(share: number): string {
  return `${Number((share * 100).toFixed(1))} %`;
}

/** Volts as `13.4 V`, two decimals below one. */
export function volts(value: number): string {
  return `${value < 1 ? value.toFixed(2) : value.toFixed(1)} V`;
}
