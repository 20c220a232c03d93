/** A run, and what may drive it. */
export interface Choice {
  readonly train: number;
  readonly startMs: number;
  readonly endMs: number;
  readonly candidates: readonly (number | string)[];
}

/** Whether outputs can be shared out so that none drives two trains at once: tries every way there is. */
export function canAssign(runs: readonly Choice[]): boolean {
  const chosen: (number | string)[] = [];
  const tryFrom = (at: number): boolean => {
    const run = runs[at];
    if (!run) return true;
    return run.candidates.some((output) => {
      const taken = runs
        .slice(0, at)
        .some((other, before) => chosen[before] === output && exclude(run, other));
      chosen[at] = output;
      return !taken && tryFrom(at + 1);
    });
  };
  return tryFrom(0);
}

function exclude(a: Choice, b: Choice): boolean {
  return a.train !== b.train && a.startMs < b.endMs && b.startMs < a.endMs;
}
