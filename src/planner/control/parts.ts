/**
 * A working cut into parts that are each wholly digital or wholly analog. The parts of train t are rows
 * `firstPart[t]` to before `firstPart[t + 1]`, in path order; a train that is not timed has none. A train changes
 * between them while it stands at a call in a changeover section, which then belongs to both parts. Where the path
 * gives no such call, the parts do not share an entry: a fault of the path.
 */
export interface Parts {
  readonly firstPart: Int32Array;
  /** 1: analog, 0: digital. */
  readonly analog: Uint8Array;
  /** Indexes in the train's path, both included. */
  readonly firstEntry: Int32Array;
  readonly lastEntry: Int32Array;
  /** When the train leaves the part's first section by the timetable, and arrives in its last. */
  readonly departMs: Int32Array;
  readonly arriveMs: Int32Array;
  /**
   * The shared first entry is under this part's control from `sinceMs`, the shared last one until `untilMs`: from
   * digital to analog at setUp before departure (not before arrival), back at release after arrival (not after
   * departure). So are the last entry of a working and the first of the next of the same stock, where that goes on from
   * digital to analog (changeOverBetween). ALWAYS, either sign, where the entry is not shared.
   */
  readonly sinceMs: Int32Array;
  readonly untilMs: Int32Array;
}

/** Farther than any instant. */
export const ALWAYS = 0x7fff_ffff;
