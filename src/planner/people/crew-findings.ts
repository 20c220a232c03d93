import type { Plan } from "../compile-plan.ts";
import { createFinding, type Finding } from "../findings.ts";
import { firstDeparture, lastArrival } from "../motion/motions.ts";
import type { CrewMember, PathEntry, Problem, Section, Train } from "../problem.ts";
import { findMissingTags } from "./passing.ts";
import { createWalkTime, WALKING, type WalkTime } from "./walking.ts";

/** One train that a member drives: from picking its handset up to handing it in, and where that is. */
interface Drive {
  readonly train: number;
  readonly fromMs: number;
  readonly untilMs: number;
  readonly startPlace: string | null;
  readonly endPlace: string | null;
}

/**
 * What is wrong with who drives what: a member in two places, too short a walk between two trains, not passed for what a
 * train asks, a junior without an adult in the slot. Design section 7; what claims refuse when they are made, looked at
 * again, for timetable, railway and people may have changed since. Turns of trains without times are left out. Cost: the
 * turns, sorted for each member.
 */
export function crewFindings(plan: Plan): Finding[] {
  const { problem, motions } = plan;
  const { members, turns, isSupervised } = problem.crew;
  if (turns.length === 0) return [];
  const walk = walkTimeOf(problem);
  const drives = members.map((): Drive[] => []);
  const findings: Finding[] = [];
  for (const { train, member } of turns) {
    if (motions.timed[train] === 0) continue;
    const drive = driveOf(plan, train);
    drives[member]?.push(drive);
    const { passedFor, junior } = members[member] as CrewMember;
    const told = {
      severity: "stops",
      span: { startMs: drive.fromMs, endMs: drive.untilMs },
      trains: [train],
      members: [member],
    } as const;
    if (findMissingTags((problem.trains[train] as Train).requires, passedFor).length > 0)
      findings.push(createFinding({ ...told, code: "driver-not-passed" }));
    if (junior && !isSupervised) findings.push(createFinding({ ...told, code: "junior-unsupervised" }));
  }
  for (const [member, own] of drives.entries()) findings.push(...findCollisions(own, member, walk));
  return findings;
}

/** Each train of a member beside the ones before it: what overlaps is told as that alone. */
function findCollisions(drives: readonly Drive[], member: number, walk: WalkTime): Finding[] {
  const inOrder = [...drives].sort(
    (a, b) => a.fromMs - b.fromMs || a.untilMs - b.untilMs || a.train - b.train,
  );
  const found: Finding[] = [];
  for (const [i, drive] of inOrder.entries())
    for (const [j, before] of inOrder.slice(0, i).entries()) {
      const trains = [before.train, drive.train];
      if (drive.fromMs < before.untilMs) {
        const endMs = Math.min(before.untilMs, drive.untilMs);
        found.push(
          createFinding({
            code: "member-in-two-places",
            severity: "stops",
            span: { startMs: drive.fromMs, endMs: Math.max(endMs, drive.fromMs + 1) },
            trains,
            members: [member],
          }),
        );
      } else if (j === i - 1) {
        const gapMs = drive.fromMs - before.untilMs;
        const needMs = walk(before.endPlace, drive.startPlace);
        if (gapMs >= needMs) continue;
        found.push(
          createFinding({
            code: "walk-too-short",
            severity: "stops",
            span: { startMs: before.untilMs, endMs: Math.max(drive.fromMs, before.untilMs + 1) },
            trains,
            members: [member],
            measured: gapMs,
            limit: needMs,
            unit: "ms",
          }),
        );
      }
    }
  return found;
}

function driveOf({ problem, motions }: Plan, train: number): Drive {
  const { path } = problem.trains[train] as Train;
  const { pickUpMs, handInMs } = problem.policy;
  return {
    train,
    fromMs: firstDeparture(motions, train) - pickUpMs,
    untilMs: lastArrival(motions, train) + handInMs,
    startPlace: placeOf(problem, path[0]),
    endPlace: placeOf(problem, path.at(-1)),
  };
}

function placeOf({ sections, places }: Problem, entry: PathEntry | undefined): string | null {
  const { place } = sections[entry?.section ?? -1] as Section;
  return places[place]?.code ?? null;
}

function walkTimeOf({ places, walks, policy }: Problem): WalkTime {
  const code = (at: number) => places[at]?.code ?? "";
  return createWalkTime(
    places,
    walks.map(({ from, to, ms }) => ({ from: code(from), to: code(to), seconds: ms / 1_000 })),
    { ...WALKING, detour: policy.walkingDetour, mmPerSecond: policy.walkingMmPerSecond },
  );
}
