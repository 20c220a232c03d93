import type { Locomotive, MotivePower, Problem, Rake, Train } from "../problem.ts";

/**
 * The stock of every train. An item is a locomotive (its index) or a rake (number of locomotives + its index). Items of
 * train t: rows `firstItem[t]` to before `firstItem[t + 1]`, locomotives first, in list order, each once.
 */
export interface Items {
  readonly firstItem: Int32Array;
  readonly item: Int32Array;
  /** From the train's head to the item's front. */
  readonly frontMm: Int32Array;
  readonly lengthMm: Int32Array;
  readonly runningMa: Int32Array;
  readonly standingMa: Int32Array;
  /** With its wheels held; −1 for a rake, which has none to hold. */
  readonly stallMa: Int32Array;
  /** When power returns; 0 for an unlit rake. */
  readonly inrushMa: Int32Array;
}

/**
 * Locomotives at the head stand one behind the other in list order from the front, those at the rear too, the last
 * listed at the very end; none reaches out of its train. A rake is taken to be as long as the train. Cost: linear in
 * items named.
 */
export function listItems(problem: Problem): Items {
  const { trains } = problem;
  let most = 0;
  for (let t = 0; t < trains.length; t++) {
    const { power, rakes } = trains[t] as Train;
    most += power.length + rakes.length;
  }
  const items: Items = {
    firstItem: new Int32Array(trains.length + 1),
    item: new Int32Array(most),
    frontMm: new Int32Array(most),
    lengthMm: new Int32Array(most),
    runningMa: new Int32Array(most),
    standingMa: new Int32Array(most),
    stallMa: new Int32Array(most),
    inrushMa: new Int32Array(most),
  };
  let row = 0;
  for (let t = 0; t < trains.length; t++) {
    row = addPower(problem, items, trains[t] as Train, row);
    row = addRakes(problem, items, trains[t] as Train, row, items.firstItem[t] as number);
    items.firstItem[t + 1] = row;
  }
  return items;
}

/** @returns the row after the train's last locomotive */
function addPower({ locomotives }: Problem, items: Items, train: Train, first: number): number {
  const { power } = train;
  let row = first;
  let headMm = 0;
  let rearMm = 0;
  for (let i = 0; i < power.length; i++) {
    const { locomotive, atRear } = power[i] as MotivePower;
    if (atRear) rearMm += (locomotives[locomotive] as Locomotive).lengthMm;
  }
  for (let i = 0; i < power.length; i++) {
    const { locomotive, atRear } = power[i] as MotivePower;
    if (isListed(items, first, row, locomotive)) continue;
    const { lengthMm, runningMa, standingMa, stallMa, inrushMa } = locomotives[locomotive] as Locomotive;
    const withinMm = Math.min(lengthMm, train.lengthMm);
    const frontMm = atRear ? train.lengthMm - rearMm : headMm;
    items.item[row] = locomotive;
    items.frontMm[row] = Math.max(0, Math.min(frontMm, train.lengthMm - withinMm));
    items.lengthMm[row] = withinMm;
    items.runningMa[row] = runningMa;
    items.standingMa[row] = standingMa;
    items.stallMa[row] = stallMa;
    items.inrushMa[row] = inrushMa;
    if (atRear) rearMm -= lengthMm;
    else headMm += lengthMm;
    row++;
  }
  return row;
}

/** @returns the row after the train's last rake */
function addRakes(
  { locomotives, rakes }: Problem,
  items: Items,
  train: Train,
  from: number,
  first: number,
): number {
  let row = from;
  for (let i = 0; i < train.rakes.length; i++) {
    const rake = train.rakes[i] as number;
    const item = locomotives.length + rake;
    if (isListed(items, first, row, item)) continue;
    const { lightingMa, inrushMa } = rakes[rake] as Rake;
    items.item[row] = item;
    items.lengthMm[row] = train.lengthMm;
    items.runningMa[row] = lightingMa;
    items.standingMa[row] = lightingMa;
    items.stallMa[row] = -1;
    items.inrushMa[row] = lightingMa > 0 ? inrushMa : 0;
    row++;
  }
  return row;
}

function isListed({ item }: Items, first: number, end: number, wanted: number): boolean {
  for (let row = first; row < end; row++) if (item[row] === wanted) return true;
  return false;
}
