/**
 * Changes of step functions: at `ms[i]` the function `key[i]` changes by `change[i]` on account of `train[i]`. Keys are
 * districts, command systems, outputs: whatever is summed. Only the first `count` rows hold.
 */
export interface StepEvents {
  count: number;
  key: Int32Array;
  ms: Int32Array;
  change: Int32Array;
  train: Int32Array;
}

export function createStepEvents(capacity: number): StepEvents {
  return {
    count: 0,
    key: new Int32Array(capacity),
    ms: new Int32Array(capacity),
    change: new Int32Array(capacity),
    train: new Int32Array(capacity),
  };
}

/** Appends one change. Amortised constant. */
export function addStep(events: StepEvents, key: number, ms: number, change: number, train: number): void {
  reserveSteps(events, 1);
  putStep(events, key, ms, change, train);
}

/** Makes room for that many more. */
export function reserveSteps(events: StepEvents, more: number): void {
  if (events.count + more > events.key.length) grow(events, more);
}

/** Appends one change for which there is room. */
export function putStep(events: StepEvents, key: number, ms: number, change: number, train: number): void {
  const at = events.count++;
  events.key[at] = key;
  events.ms[at] = ms;
  events.change[at] = change;
  events.train[at] = train;
}

function grow(events: StepEvents, more: number): void {
  const capacity = 2 * events.key.length + more;
  events.key = enlarged(events.key, capacity);
  events.ms = enlarged(events.ms, capacity);
  events.change = enlarged(events.change, capacity);
  events.train = enlarged(events.train, capacity);
}

function enlarged(from: Int32Array, capacity: number): Int32Array {
  const to = new Int32Array(capacity);
  to.set(from);
  return to;
}
