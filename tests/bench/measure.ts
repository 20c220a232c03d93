/**
 * Median wall time of one call of each subject, ms, JIT warm. All subjects take turns lap by lap, so that whatever else
 * the machine does hits them alike: trust the ratios more than the times. A lap is as many calls as fill `lapMs`.
 */
export function medianTimes<Name extends string>(
  subjects: Readonly<Record<Name, () => unknown>>,
  { laps = 25, lapMs = 10, warmMs = 250 } = {},
): Record<Name, number> {
  const names = Object.keys(subjects) as Name[];
  const calls = names.map((name) => warmUp(subjects[name], warmMs, lapMs));
  const times = names.map((): number[] => []);
  for (let lap = 0; lap < laps; lap++)
    names.forEach((name, i) => {
      const call = subjects[name];
      // so that nobody clears up after somebody else (npm run bench exposes it)
      globalThis.gc?.();
      const begun = performance.now();
      for (let n = 0; n < (calls[i] as number); n++) kept.result = call();
      times[i]?.push((performance.now() - begun) / (calls[i] as number));
    });
  return Object.fromEntries(names.map((name, i) => [name, median(times[i] as number[])])) as Record<
    Name,
    number
  >;
}

/** Takes results, so that no measured call can be optimised away. */
const kept: { result?: unknown } = {};

/** @returns how many calls fill a lap */
function warmUp(call: () => unknown, warmMs: number, lapMs: number): number {
  const begun = performance.now();
  let calls = 0;
  let fastest = Number.POSITIVE_INFINITY;
  while (calls < 3 || performance.now() - begun < warmMs) {
    const start = performance.now();
    kept.result = call();
    fastest = Math.min(fastest, performance.now() - start);
    calls++;
  }
  return Math.max(1, Math.floor(lapMs / Math.max(fastest, 0.001)));
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] as number;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[middle - 1] as number)) / 2;
}
