import type { Plan } from "../compile-plan.ts";

/**
 * Which trains need a handset of which command system when: half-open, ms, in order of train. Only the first `count`
 * rows hold.
 */
export interface Needs {
  count: number;
  train: Int32Array;
  system: Int32Array;
  fromMs: Int32Array;
  toMs: Int32Array;
}

/**
 * For each digital part of a working and each command system that drives it: from pickUp before the part's departure to
 * handIn after its arrival. A train never needs two of a system at once: what would overlap or touch is one. Cost:
 * linear in path entries.
 */
export function handsetNeeds(plan: Plan): Needs {
  const needs = createNeeds(2 * plan.motions.timed.length);
  for (let train = 0; train < plan.motions.timed.length; train++) addTrainNeeds(plan, needs, train);
  return needs;
}

export function createNeeds(capacity: number): Needs {
  return {
    count: 0,
    train: new Int32Array(capacity),
    system: new Int32Array(capacity),
    fromMs: new Int32Array(capacity),
    toMs: new Int32Array(capacity),
  };
}

/** Nothing for a train that is not timed. */
export function addTrainNeeds(plan: Plan, needs: Needs, train: number): void {
  const { motions, parts, track } = plan;
  const { pickUpMs, handInMs } = plan.problem.policy;
  const first = needs.count;
  const row = motions.firstRow[train] as number;
  const end = parts.firstPart[train + 1] as number;
  for (let part = parts.firstPart[train] as number; part < end; part++) {
    if (parts.analog[part] === 1) continue;
    const fromMs = (parts.departMs[part] as number) - pickUpMs;
    const toMs = (parts.arriveMs[part] as number) + handInMs;
    const last = row + (parts.lastEntry[part] as number);
    let before = -1;
    for (let at = row + (parts.firstEntry[part] as number); at <= last; at++) {
      const system = track.commandSystem[motions.section[at] as number] as number;
      if (system < 0 || system === before) continue;
      before = system;
      if (!prolong(needs, first, system, fromMs, toMs)) addNeed(needs, train, system, fromMs, toMs);
    }
  }
}

/** Whether the train already has the system's handset when it would pick it up; then it keeps it for longer. */
function prolong(needs: Needs, first: number, system: number, fromMs: number, toMs: number): boolean {
  for (let i = needs.count - 1; i >= first; i--) {
    if (needs.system[i] !== system) continue;
    if ((needs.toMs[i] as number) < fromMs) return false;
    needs.toMs[i] = toMs;
    return true;
  }
  return false;
}

function addNeed(needs: Needs, train: number, system: number, fromMs: number, toMs: number): void {
  if (needs.count === needs.train.length) grow(needs);
  const at = needs.count++;
  needs.train[at] = train;
  needs.system[at] = system;
  needs.fromMs[at] = fromMs;
  needs.toMs[at] = toMs;
}

function grow(needs: Needs): void {
  const enlarge = (column: Int32Array) => {
    const larger = new Int32Array(2 * column.length + 16);
    larger.set(column);
    return larger;
  };
  needs.train = enlarge(needs.train);
  needs.system = enlarge(needs.system);
  needs.fromMs = enlarge(needs.fromMs);
  needs.toMs = enlarge(needs.toMs);
}
