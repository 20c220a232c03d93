/**
 * A blocking time of one section, counted from its own train's start: half-open, ms (or any one unit of time). Built from an
 * `Occupation`'s `blocked` less the train's first departure.
 */
export interface BlockingBox {
  readonly section: number;
  readonly start: number;
  readonly end: number;
}

/**
 * How long after the first train the second may start at the earliest: the greatest overlap of their boxes over the sections
 * that both use, 0 where they share none. Pachl, *Railway Operation and Control*: minimum headway of an ordered pair.
 * Cost: first × second.
 */
export function minimumHeadway(first: readonly BlockingBox[], second: readonly BlockingBox[]): number {
  let headway = 0;
  for (const one of first)
    for (const other of second)
      if (one.section === other.section) headway = Math.max(headway, one.end - other.start);
  return headway;
}

/**
 * How long a sequence of trains takes pushed together until their boxes touch, the first following the last again: the
 * sum of the headways of neighbours. UIC Code 406: the compressed timetable. 0 for no train.
 */
export function compressedCycle<Train>(
  order: readonly Train[],
  headway: (first: Train, second: Train) => number,
): number {
  return order.reduce((sum, train, i) => sum + headway(train, order[(i + 1) % order.length] as Train), 0);
}

/** Share of a window that the compressed timetable takes, supplements included. UIC Code 406: K = 100 · k / U, here as a share. */
export function occupancyRate(compressed: number, supplement: number, window: number): number {
  return (compressed + supplement) / window;
}
