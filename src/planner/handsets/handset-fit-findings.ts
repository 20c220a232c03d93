import { createAllowance } from "../analog/allowance.ts";
import { assignOutputs } from "../analog/assign.ts";
import { irreducibleCore } from "../analog/core.ts";
import type { Demand } from "../analog/demand.ts";
import type { Plan } from "../compile-plan.ts";
import { createFinding, type Finding } from "../findings.ts";
import { findUnusable, type HandsetRecord } from "../people/handset-fit.ts";
import type { Handset, Problem } from "../problem.ts";
import type { Needs } from "./handset-need.ts";

/** States that the search for handsets may visit: about a tenth of a second. */
const MOST_STATES = 2_000;
/** Needs up to which a proof is looked for; a larger night is told of by counts alone. */
const MOST_NEEDS = 400;

/**
 * Whether every train finds a handset that can be used at every place where it calls or passes under digital control, and
 * whether the handsets can be shared out so, by the same exact search that shares out controller outputs; and the handsets
 * that people have already: out of reach, or away for longer than a charge lasts. Design section 7. `isShort` says of which
 * systems too few handsets are told of anyway. Cost: needs × handsets × places, and the search.
 */
export function handsetFitFindings(
  plan: Plan,
  needs: Needs,
  isShort: (system: number) => boolean,
): Finding[] {
  const { problem } = plan;
  if (problem.handsets.length === 0) return [];
  const places = placesOfNeeds(plan, needs);
  const findings: Finding[] = [];
  for (let system = 0; system < problem.commandSystems.length; system++) {
    const ready = problem.handsets.flatMap((handset, at) =>
      handset.ready && handset.commandSystem === system ? [at] : [],
    );
    if (ready.length > 0)
      findings.push(...systemFindings(problem, needs, places, system, ready, isShort(system)));
  }
  findings.push(...claimedFindings(problem, needs, places));
  return findings;
}

function systemFindings(
  problem: Problem,
  needs: Needs,
  places: readonly (readonly string[])[],
  system: number,
  ready: readonly number[],
  isShort: boolean,
): Finding[] {
  const findings: Finding[] = [];
  const demands: Demand[] = [];
  let isChoosy = false;
  for (let i = 0; i < needs.count; i++) {
    if (needs.system[i] !== system) continue;
    const train = needs.train[i] as number;
    const span = { startMs: needs.fromMs[i] as number, endMs: needs.toMs[i] as number };
    const candidates = ready.filter(
      (at) => lasts(problem, at, span.endMs - span.startMs) && fits(problem, at, system, places[i] ?? []),
    );
    if (candidates.length === 0)
      findings.push(
        createFinding({
          code: "handset-none-usable",
          severity: "stops",
          span,
          trains: [train],
          commandSystems: [system],
        }),
      );
    else demands.push({ ...span, train, candidates });
    if (candidates.length < ready.length) isChoosy = true;
  }
  // where each does for every train, counting them is enough
  if (isShort || !isChoosy || demands.length === 0 || demands.length > MOST_NEEDS) return findings;
  const allowance = createAllowance(MOST_STATES);
  const answer = assignOutputs(demands, allowance);
  if (answer.status !== "impossible") return findings;
  const { core } = irreducibleCore(demands, demands.length, allowance);
  const members = core.map((at) => demands[at] as Demand);
  const usable = new Set(members.flatMap(({ candidates }) => candidates));
  findings.push(
    createFinding({
      code: "handsets-do-not-fit",
      severity: "stops",
      span: {
        startMs: Math.min(...members.map(({ startMs }) => startMs)),
        endMs: Math.max(...members.map(({ endMs }) => endMs)),
      },
      trains: [...new Set(members.map(({ train }) => train))].sort((a, b) => a - b),
      commandSystems: [system],
      handsets: [...usable].sort((a, b) => a - b),
      measured: members.length,
      limit: usable.size,
      unit: "handsets",
    }),
  );
  return findings;
}

/** Handsets that people have: unusable along the run, or away for longer than a charge lasts. */
function claimedFindings(problem: Problem, needs: Needs, places: readonly (readonly string[])[]): Finding[] {
  const findings: Finding[] = [];
  const uses = new Map<number, { trains: number[]; fromMs: number; untilMs: number }>();
  const needsOf = new Map<number, number[]>();
  for (let i = 0; i < needs.count; i++) {
    const train = needs.train[i] as number;
    needsOf.set(train, [...(needsOf.get(train) ?? []), i]);
  }
  for (const { train, member, handset } of problem.crew.turns) {
    const own = needsOf.get(train) ?? [];
    if (handset < 0 || own.length === 0) continue;
    const fromMs = Math.min(...own.map((i) => needs.fromMs[i] as number));
    const untilMs = Math.max(...own.map((i) => needs.toMs[i] as number));
    const before = uses.get(handset);
    uses.set(handset, {
      trains: [...(before?.trains ?? []), train],
      fromMs: Math.min(fromMs, before?.fromMs ?? fromMs),
      untilMs: Math.max(untilMs, before?.untilMs ?? untilMs),
    });
    const isUsable = own.some((i) => fits(problem, handset, needs.system[i] as number, places[i] ?? []));
    if (!isUsable)
      findings.push(
        createFinding({
          code: "handset-out-of-reach",
          severity: "stops",
          span: { startMs: fromMs, endMs: untilMs },
          trains: [train],
          members: [member],
          handsets: [handset],
        }),
      );
  }
  for (const [handset, { trains, fromMs, untilMs }] of uses) {
    const { batteryMs } = problem.handsets[handset] as Handset;
    if (batteryMs === null || untilMs - fromMs <= batteryMs) continue;
    findings.push(
      createFinding({
        code: "handset-battery-short",
        severity: "stops",
        span: { startMs: fromMs, endMs: untilMs },
        trains: trains.sort((a, b) => a - b),
        handsets: [handset],
        measured: untilMs - fromMs,
        limit: batteryMs,
        unit: "ms",
      }),
    );
  }
  return findings;
}

/** Whether a charge lasts for one train at least; for more than one, only of handsets that people have is it known. */
function lasts({ handsets }: Problem, at: number, ms: number): boolean {
  const { batteryMs } = handsets[at] as Handset;
  return batteryMs === null || ms <= batteryMs;
}

function fits(
  { handsets, places, commandSystems }: Problem,
  at: number,
  system: number,
  along: readonly string[],
): boolean {
  const { code, commandSystem, kind, places: usable, batteryMs } = handsets[at] as Handset;
  const record: HandsetRecord = {
    code,
    commandSystem: commandSystems[commandSystem]?.code ?? "",
    kind,
    places: usable.map((place) => places[place]?.code ?? ""),
    batteryMs,
    // whether it is ready is looked at apart
    ready: true,
  };
  return findUnusable(record, { commandSystem: commandSystems[system]?.code ?? "", places: along }) === null;
}

/** The places at which each need's train calls or passes on digital sections of the need's system. */
function placesOfNeeds({ problem, motions, parts, track }: Plan, needs: Needs): string[][] {
  const found: string[][] = [];
  for (let i = 0; i < needs.count; i++) {
    const train = needs.train[i] as number;
    const row = motions.firstRow[train] as number;
    const along = new Set<string>();
    const end = parts.firstPart[train + 1] as number;
    for (let part = parts.firstPart[train] as number; part < end; part++) {
      if (parts.analog[part] === 1) continue;
      const last = row + (parts.lastEntry[part] as number);
      for (let at = row + (parts.firstEntry[part] as number); at <= last; at++) {
        const section = motions.section[at] as number;
        if (track.commandSystem[section] !== needs.system[i]) continue;
        const place = problem.places[problem.sections[section]?.place ?? -1]?.code;
        if (place !== undefined) along.add(place);
      }
    }
    found.push([...along]);
  }
  return found;
}
