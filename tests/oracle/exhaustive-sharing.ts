/** A train that wants a handset, those that would do, and whether somebody has it already. */
export interface Wish {
  readonly train: number;
  readonly startMs: number;
  readonly endMs: number;
  readonly candidates: readonly number[];
  readonly isClaimed: boolean;
}

/**
 * Whether handsets can be shared out so that none is in two hands at once and none is away, from the first train of the
 * evening to the last, for longer than its charge: tries every way there is, and looks only when all are given. A charge
 * that what is claimed asks too much of by itself is nobody's to mend.
 */
export function canShare(wishes: readonly Wish[], charges: readonly (number | null)[]): boolean {
  const given: number[] = [];
  const tryFrom = (at: number): boolean => {
    const wish = wishes[at];
    if (!wish) return isGood(wishes, given, charges);
    return wish.candidates.some((handset) => {
      given[at] = handset;
      return tryFrom(at + 1);
    });
  };
  return tryFrom(0);
}

/** Judges a sharing from what the words mean. */
export function isGood(
  wishes: readonly Wish[],
  given: readonly number[],
  charges: readonly (number | null)[],
): boolean {
  return charges.every((charge, handset) => {
    const own = wishes.filter((_, at) => given[at] === handset);
    const meets = own.some((a) =>
      own.some((b) => a !== b && a.train !== b.train && a.startMs < b.endMs && b.startMs < a.endMs),
    );
    if (meets) return false;
    if (charge === null || own.length === 0 || own.every(({ isClaimed }) => isClaimed)) return true;
    const first = Math.min(...own.map(({ startMs }) => startMs));
    const last = Math.max(...own.map(({ endMs }) => endMs));
    return last - first <= charge;
  });
}
