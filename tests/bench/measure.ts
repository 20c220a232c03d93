/** Keeps results alive so that no measured call can be optimised away. */
let kept: unknown;

/**
 * Median wall time of one call in ms, JIT warm: first calls until `warmMs` has passed, then laps of many calls each
 * until `measureMs` has passed, at least nine laps.
 */
export function medianMs(call: () => unknown, warmMs = 400, measureMs = 800): number {
  const calls = warmUp(call, warmMs);
  const perLap = Math.max(1, Math.floor(calls / 20));
  const laps: number[] = [];
  const begun = performance.now();
  while (laps.length < 9 || performance.now() - begun < measureMs) {
    const start = performance.now();
    for (let i = 0; i < perLap; i++) kept = call();
    laps.push((performance.now() - start) / perLap);
  }
  return median(laps);
}

function warmUp(call: () => unknown, warmMs: number): number {
  const begun = performance.now();
  let calls = 0;
  while (calls < 3 || performance.now() - begun < warmMs) {
    kept = call();
    calls++;
  }
  return kept === undefined ? calls : calls;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] as number;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[middle - 1] as number)) / 2;
}
