/** Something done to a layout clock at a real instant: started, paused, or set to a reading. Any ms will do as zero. */
export type ClockChange =
  | { readonly run: "start" | "pause"; readonly atMs: number }
  | { readonly run: "set"; readonly atMs: number; readonly layoutMs: number };

export interface ClockReading {
  /** Layout ms since the timetable's midnight; not rounded. */
  readonly layoutMs: number;
  readonly running: boolean;
}

/** A clock that has not been started: what it shows, and layout ms a real ms brings. */
export interface ClockFace {
  readonly layoutStartMs: number;
  readonly ratio: number;
}

/**
 * What a layout clock shows at a real instant, from all that was done to it, in order of time. What comes after the
 * instant does not count; what is done at it does. A pause adds no layout time: check-values section 4. Starting a
 * clock that runs, or pausing one that stands, changes nothing. Real ms are added up whole and multiplied once, so
 * that any number of pauses costs no accuracy. Cost: linear in changes.
 */
export function layoutTimeAt(changes: readonly ClockChange[], face: ClockFace, atMs: number): ClockReading {
  let baseMs = face.layoutStartMs;
  let ranMs = 0;
  let startedMs: number | null = null;
  for (const change of changes) {
    if (change.atMs > atMs) break;
    if (startedMs !== null) {
      ranMs += change.atMs - startedMs;
      startedMs = change.run === "pause" ? null : change.atMs;
    } else if (change.run === "start") startedMs = change.atMs;
    if (change.run === "set") {
      baseMs = change.layoutMs;
      ranMs = 0;
    }
  }
  if (startedMs !== null) ranMs += atMs - startedMs;
  return { layoutMs: baseMs + ranMs * face.ratio, running: startedMs !== null };
}
