import type { FindingReport } from "../../../shared/check.ts";

/** mA as people read amps: `2.90 A`, below an ampere `450 mA`; with `more` places than that. */
export function amps(ma: number, more = 0): string {
  return ma < 1_000 ? `${ma.toFixed(more)} mA` : `${(ma / 1_000).toFixed(2 + more)} A`;
}

/** Real seconds as `38 s` or `2 min 5 s`; tenths below ten seconds. */
export function duration(seconds: number): string {
  if (seconds < 10) return `${Number(seconds.toFixed(1))} s`;
  const whole = Math.round(seconds);
  if (whole < 60) return `${whole} s`;
  const rest = whole % 60;
  return rest === 0 ? `${whole / 60} min` : `${Math.floor(whole / 60)} min ${rest} s`;
}

/** `1 handset`, `3 handsets`. */
export function count(n: number, noun: string, plural = `${noun}s`): string {
  return `${n} ${n === 1 ? noun : plural}`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(items: readonly string[]): string {
  if (items.length <= 1) return items[0] ?? "";
  return `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`;
}

/** A share of 1 in whole per cent: `78 %`; with `more` places than that. */
export function percent(share: number, more = 0): string {
  return `${(share * 100).toFixed(more)} %`;
}

/** A measured figure in its unit, `1450 mm`; null for a finding without one. `more`: places beyond those people read. */
export function figure(value: number | null, unit: FindingReport["unit"], more = 0): string | null {
  if (value === null) return null;
  switch (unit) {
    case "mA":
      return amps(value, more);
    case "ms":
      return duration(value / 1_000);
    case "mm":
    case "km/h":
      return `${Number(value.toFixed(1))} ${unit}`;
    case "trains":
    case "handsets":
    case "outputs":
      return count(value, unit.slice(0, -1));
    case "address":
      return String(value);
    case "addresses":
      return count(value, "address", "addresses");
    case "share":
      return percent(value, more);
    case "V":
      return `${Number(value.toFixed(2 + more))} V`;
    case "none":
      return null;
  }
}

/** What a stretch of time measures, by the finding: these have no limit but 0. */
const TIMED: Partial<Record<FindingReport["code"], string>> = {
  "path-times-backwards": "back in time",
  "stock-in-two-trains": "in both",
  "train-outside-slot": "past the end",
};

/** Finer than any figure of a finding is. */
const MOST_MORE = 4;

/**
 * The figure against its limit in one phrase: `3.12 A, limit 3.00 A`, with as many places as tell them apart; null where
 * there is no figure.
 */
export function figureAgainstLimit({ code, measured, limit, unit }: FindingReport): string | null {
  const value = figure(measured, unit);
  if (value === null) return null;
  if (unit === "ms") return `${value} of real time ${TIMED[code] ?? ""}`.trim();
  if (limit === null) return value;
  if (unit === "trains" || unit === "handsets" || unit === "outputs") return `${value}, room for ${limit}`;
  let more = 0;
  while (more < MOST_MORE && measured !== limit && figure(measured, unit, more) === figure(limit, unit, more))
    more++;
  return `${figure(measured, unit, more)}, limit ${figure(limit, unit, more)}`;
}
