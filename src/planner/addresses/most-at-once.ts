import { createFinding, type Finding } from "../findings.ts";
import type { Needs } from "../handsets/handset-need.ts";
import type { CommandSystem, Problem, Train } from "../problem.ts";
import { stepCurve, timeAbove } from "../steps/step-curve.ts";
import { addStep, createStepEvents, type StepEvents } from "../steps/step-events.ts";
import { type StepSweep, sweepSteps } from "../steps/sweep-steps.ts";

/**
 * Whether a command system is ever asked for more handsets or addresses at once than it drives. A train uses the addresses
 * of its decoders as long as it needs a handset; an address that two trains use at once is one. Nothing for a system without
 * such a limit. Cost: sorting the needs.
 */
export function findCrowded(problem: Problem, needs: Needs, system: number): Finding[] {
  const { mostHandsets, mostAddresses } = problem.commandSystems[system] as CommandSystem;
  if (mostHandsets === 0 && mostAddresses === 0) return [];
  const uses = usesOf(needs, system);
  const found: Finding[] = [];
  if (mostHandsets > 0)
    found.push(...above(problem, uses, system, "handsets-too-many", mostHandsets, eachByItself(uses)));
  if (mostAddresses > 0) {
    const withAddresses = uses.filter(({ train }) => addressesOf(problem, train).size > 0);
    found.push(
      ...above(
        problem,
        withAddresses,
        system,
        "addresses-too-many",
        mostAddresses,
        byAddress(problem, withAddresses),
      ),
    );
  }
  return found;
}

/** The most decoder addresses that a command system is asked for at once. Cost: sorting the needs. */
export function mostAddressesAtOnce(problem: Problem, needs: Needs, system: number): number {
  return sweepAlone(problem, byAddress(problem, usesOf(needs, system))).groupPeak[0] as number;
}

/** A train that the system drives, from pick-up to hand-in; ms, half-open. */
interface Use {
  readonly train: number;
  readonly fromMs: number;
  readonly toMs: number;
}

function usesOf(needs: Needs, system: number): Use[] {
  const uses: Use[] = [];
  for (let i = 0; i < needs.count; i++)
    if (needs.system[i] === system)
      uses.push({
        train: needs.train[i] as number,
        fromMs: needs.fromMs[i] as number,
        toMs: needs.toMs[i] as number,
      });
  return uses;
}

/** Short 3 and long 3 are two (NMRA S-9.2.1). */
function addressesOf({ trains, locomotives }: Problem, train: number): Set<string> {
  return new Set(
    (trains[train] as Train).power.flatMap(({ locomotive }) => {
      const decoder = locomotives[locomotive]?.decoder;
      return decoder ? [`${decoder.addressKind} ${decoder.address}`] : [];
    }),
  );
}

function eachByItself(uses: readonly Use[]): StepEvents {
  const events = createStepEvents(2 * uses.length);
  for (const use of uses) add(events, use);
  return events;
}

/** Each address for as long as any train uses it: one engine goes from train to train, and their times overlap. */
function byAddress(problem: Problem, uses: readonly Use[]): StepEvents {
  const events = createStepEvents(2 * uses.length);
  const open = new Map<string, Use>();
  for (const use of [...uses].sort((a, b) => a.fromMs - b.fromMs || a.train - b.train))
    for (const address of addressesOf(problem, use.train)) {
      const before = open.get(address);
      if (before !== undefined && use.fromMs <= before.toMs) {
        open.set(address, { ...before, toMs: Math.max(before.toMs, use.toMs) });
        continue;
      }
      if (before !== undefined) add(events, before);
      open.set(address, use);
    }
  for (const use of open.values()) add(events, use);
  return events;
}

function add(events: StepEvents, { train, fromMs, toMs }: Use): void {
  addStep(events, 0, fromMs, 1, train);
  addStep(events, 0, toMs, -1, train);
}

function above(
  problem: Problem,
  uses: readonly Use[],
  system: number,
  code: "handsets-too-many" | "addresses-too-many",
  most: number,
  events: StepEvents,
): Finding[] {
  const sweep = sweepAlone(problem, events);
  const peak = sweep.groupPeak[0] as number;
  if (peak <= most) return [];
  const of = { sweep, group: 0, key: null, constant: 0 };
  const atMs = sweep.groupPeakAtMs[0] as number;
  const curve = stepCurve(of, { startMs: sweep.sorted.time[0] as number, endMs: Number.MAX_SAFE_INTEGER });
  const high = timeAbove(curve, most, 0);
  if (high === null) throw new Error("what is above its limit is so for some time");
  const there = uses.filter(({ fromMs, toMs }) => fromMs <= atMs && atMs < toMs);
  return [
    createFinding({
      code,
      severity: "stops",
      span: high.span,
      trains: [...new Set(there.map(({ train }) => train))].sort((a, b) => a - b),
      commandSystems: [system],
      measured: peak,
      limit: most,
      unit: code === "handsets-too-many" ? "handsets" : "addresses",
      atMs,
      overMs: high.totalMs,
    }),
  ];
}

const sweepAlone = ({ slot }: Problem, events: StepEvents): StepSweep =>
  sweepSteps(events, new Int32Array(1), new Int32Array(1), slot.startMs);
