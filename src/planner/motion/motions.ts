/**
 * How every train moves: design section 4 as numbers. One row a path entry, one call a timed point, train after
 * train: the rows of train t are `firstRow[t]` to before `firstRow[t + 1]`. Lengths mm along the train's own path
 * (0 where its first section begins), times ms.
 *
 * Trains whose times run backwards are not `timed`: their instants and calls mean nothing, and every pass but the path
 * faults leaves them out.
 */
export interface Motions {
  /** 1: the train's times run forwards. 0: nothing below but its sections and lengths holds for it. */
  readonly timed: Uint8Array;
  readonly lengthMm: Int32Array;

  readonly firstRow: Int32Array;
  /** The train that the row belongs to. */
  readonly trainOfRow: Int32Array;
  readonly section: Int32Array;
  /** Where the section ends; it begins where the row before ends. */
  readonly endMm: Int32Array;
  /** When the head enters: the last instant at the section's beginning. STANDS where the train starts in it. */
  readonly enterMs: Int32Array;
  /** When the tail clears: the first instant at which all of the train is past its end. STANDS: it never does. */
  readonly clearMs: Int32Array;

  /**
   * Calls: entries with times, passes included, in path order. The first has arrive = depart, the last too. A path of
   * one entry makes two calls at the same place: its departure, then its arrival.
   */
  readonly firstCall: Int32Array;
  readonly callEntry: Int32Array;
  /** Where the head stands at the call: the end of its section. */
  readonly callMm: Int32Array;
  readonly arriveMs: Int32Array;
  readonly departMs: Int32Array;
}

/** In `enterMs` and `clearMs`: stands there from the start, or to the end. */
export const STANDS = -0x8000_0000;

/** Farthest instant from the session's start, either way: 12.4 days, so that sums stay within 32 bits. */
export const FARTHEST_MS = 0x4000_0000;

/** One timed point of a train. Equal times: a pass, or the first or last point. */
export interface Call {
  /** Index in the train's path. */
  readonly entry: number;
  readonly headMm: number;
  readonly arriveMs: number;
  readonly departMs: number;
}

/** Null: the train stands in it from the start. */
export function enterOf(motions: Motions, train: number, entry: number): number | null {
  const at = motions.enterMs[row(motions, train, entry)] as number;
  return at === STANDS ? null : at;
}

/** Null: the train stands in it to the end. */
export function clearOf(motions: Motions, train: number, entry: number): number | null {
  const at = motions.clearMs[row(motions, train, entry)] as number;
  return at === STANDS ? null : at;
}

/** Empty for a train that is not timed. */
export function callsOf(motions: Motions, train: number): Call[] {
  const calls: Call[] = [];
  if (motions.timed[train] === 0) return calls;
  const end = motions.firstCall[train + 1] as number;
  for (let call = motions.firstCall[train] as number; call < end; call++)
    calls.push({
      entry: motions.callEntry[call] as number,
      headMm: motions.callMm[call] as number,
      arriveMs: motions.arriveMs[call] as number,
      departMs: motions.departMs[call] as number,
    });
  return calls;
}

/** Timed trains only. */
export function firstDeparture(motions: Motions, train: number): number {
  return motions.departMs[motions.firstCall[train] as number] as number;
}

/** Timed trains only. */
export function lastArrival(motions: Motions, train: number): number {
  return motions.arriveMs[(motions.firstCall[train + 1] as number) - 1] as number;
}

/** Where the section of a path entry begins, mm along the path. */
export function startMmOf(motions: Motions, train: number, entry: number): number {
  return entry === 0 ? 0 : (motions.endMm[row(motions, train, entry) - 1] as number);
}

/** Where it ends. */
export function endMmOf(motions: Motions, train: number, entry: number): number {
  return motions.endMm[row(motions, train, entry)] as number;
}

/** Where the head is, mm along the path, not rounded; before the first departure and after the last arrival it stands. */
export function headAt(motions: Motions, train: number, atMs: number): number {
  const first = motions.firstCall[train] as number;
  const end = motions.firstCall[train + 1] as number;
  for (let call = first; call < end; call++) {
    const from = motions.callMm[call] as number;
    if (atMs <= (motions.departMs[call] as number) || call === end - 1) return from;
    const arrive = motions.arriveMs[call + 1] as number;
    if (atMs >= arrive) continue;
    const depart = motions.departMs[call] as number;
    return from + (((motions.callMm[call + 1] as number) - from) * (atMs - depart)) / (arrive - depart);
  }
  throw new RangeError(`train ${train} has no calls: its times run backwards`);
}

function row(motions: Motions, train: number, entry: number): number {
  return (motions.firstRow[train] as number) + entry;
}
