/** One train's bends on the picture, in pixels, left to right. */
export interface DrawnTrain {
  readonly train: string;
  readonly points: readonly (readonly [x: number, y: number])[];
}

/** Where a train's number stands: centred there, turned by `angle` degrees so that it lies along the line. */
export interface TrainLabel {
  readonly train: string;
  readonly x: number;
  readonly y: number;
  readonly angle: number;
}

/** A piece of the picture, px. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Advance of a digit or letter and height of the boldest labels, those of a chosen finding. */
const [LETTER_PX, HEIGHT_PX] = [8.5, 13];
/** A number lies this far off its line, so that the line does not strike it out. */
const OFFSET_PX = 7;

/** Places to try along each line, nearest to the middle of its longest stretch first. */
const ALONG = [0.5, 0.3, 0.7, 0.15, 0.85];

function boxOf(label: TrainLabel): Box {
  const width = label.train.length * LETTER_PX;
  const turn = (Math.abs(label.angle) * Math.PI) / 180;
  const halfWidth = (width * Math.cos(turn) + HEIGHT_PX * Math.sin(turn)) / 2;
  const halfHeight = (width * Math.sin(turn) + HEIGHT_PX * Math.cos(turn)) / 2;
  return {
    left: label.x - halfWidth,
    right: label.x + halfWidth,
    top: label.y - halfHeight,
    bottom: label.y + halfHeight,
  };
}

const meets = (a: Box, b: Box) =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Candidates on the train's stretches, longest stretch first. */
function* candidates(drawn: DrawnTrain): Generator<TrainLabel> {
  const stretches = drawn.points.slice(1).map((to, i) => {
    const from = drawn.points[i] ?? to;
    return { from, to, length: Math.hypot(to[0] - from[0], to[1] - from[1]), moves: from[1] !== to[1] };
  });
  const byLength = stretches.sort((a, b) => Number(b.moves) - Number(a.moves) || b.length - a.length);
  for (const { from, to, length } of byLength.slice(0, 3)) {
    if (length === 0) continue;
    const [dx, dy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    const angle = (Math.atan2(dy, dx) * 180) / Math.PI;
    for (const along of ALONG) {
      const x = from[0] + (to[0] - from[0]) * along + dy * OFFSET_PX;
      const y = from[1] + (to[1] - from[1]) * along - dx * OFFSET_PX;
      yield { train: drawn.train, x, y, angle };
    }
  }
}

/**
 * A number at every line where there is room: none covers another or something of `taken`, or leaves the frame. Those
 * earlier in the list get their place first; a train without room stays without a number. Cost: labels placed × tried,
 * held down by a grid.
 */
export function placeTrainLabels(
  drawn: readonly DrawnTrain[],
  frame: Box,
  taken: readonly Box[] = [],
): TrainLabel[] {
  const cell = 48;
  const grid = new Map<string, Box[]>();
  const cellsOf = (box: Box) => {
    const keys: string[] = [];
    for (let i = Math.floor(box.left / cell); i <= Math.floor(box.right / cell); i++)
      for (let j = Math.floor(box.top / cell); j <= Math.floor(box.bottom / cell); j++)
        keys.push(`${i},${j}`);
    return keys;
  };
  const isFree = (box: Box) =>
    box.left >= frame.left &&
    box.right <= frame.right &&
    box.top >= frame.top &&
    box.bottom <= frame.bottom &&
    !cellsOf(box).some((key) => grid.get(key)?.some((other) => meets(box, other)));

  const take = (box: Box) => {
    for (const key of cellsOf(box)) grid.set(key, [...(grid.get(key) ?? []), box]);
  };
  taken.forEach(take);
  const placed: TrainLabel[] = [];
  for (const train of drawn)
    for (const label of candidates(train)) {
      const box = boxOf(label);
      if (!isFree(box)) continue;
      take(box);
      placed.push(label);
      break;
    }
  return placed;
}
