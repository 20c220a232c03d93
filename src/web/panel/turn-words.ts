import type { SelectorSchedule, SelectorTurn } from "../../../shared/selector-schedule.ts";

/** Where a selector is turned to, as it is written at the panel. */
export const positionText = (output: string | null) => output ?? "off";

/** Whom a turn is for: `3G04 runs`. */
export function purpose({ train, reason }: SelectorTurn): string {
  switch (reason) {
    case "runs":
      return `${train} runs`;
    case "stands":
      return `${train} stands`;
    case "digital":
      return `${train} is digital here`;
  }
}

/** How much time there is for a turn that is best made at `atMs`. */
export function leeway(atMs: number, turn: SelectorTurn): string {
  const early = turn.mayFromMs < atMs && turn.mayFrom !== turn.mayTo;
  const late = turn.mayToMs > atMs && turn.mayFrom !== turn.mayTo;
  if (early && late) return `any time ${turn.mayFrom}–${turn.mayTo}`;
  if (late) return `latest ${turn.mayTo}`;
  if (early) return `earliest ${turn.mayFrom}`;
  return "just then";
}

/** Most selectors that are on at one time, and since when. */
export function mostOn({ sections }: Pick<SelectorSchedule, "sections">): { most: number; atMs: number } {
  const steps = sections
    .flatMap(({ bands }) => bands)
    .flatMap(({ fromMs, toMs }) => [
      { ms: fromMs, by: 1 },
      { ms: toMs, by: -1 },
    ])
    .sort((a, b) => a.ms - b.ms || a.by - b.by);
  let on = 0;
  let most = 0;
  let atMs = 0;
  for (const { ms, by } of steps) {
    on += by;
    if (on > most) [most, atMs] = [on, ms];
  }
  return { most, atMs };
}
