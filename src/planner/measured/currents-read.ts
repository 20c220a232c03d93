/** A reading as far as it is of a locomotive; null: it is of something else. */
export interface CurrentRead {
  readonly locomotive: string | null;
  readonly state: string | null;
  readonly ma: number;
}

/** What was read of each locomotive in each state; empty where nothing was. Cost: linear. */
export function currentsRead(
  readings: readonly CurrentRead[],
): (locomotive: string, state: "running" | "standing" | "stalled" | "inrush") => readonly number[] {
  const read = new Map<string, number[]>();
  for (const { locomotive, state, ma } of readings) {
    if (locomotive === null || state === null) continue;
    const key = `${state} ${locomotive}`;
    const list = read.get(key);
    if (list === undefined) read.set(key, [ma]);
    else list.push(ma);
  }
  return (locomotive, state) => read.get(`${state} ${locomotive}`) ?? [];
}
