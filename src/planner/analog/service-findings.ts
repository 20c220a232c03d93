import { createFinding, type Finding } from "../findings.ts";
import type { Interval } from "../problem.ts";
import type { RunAssignment, UnservedGroup } from "./assign-runs.ts";
import type { OpenRun } from "./build-runs.ts";

/**
 * Findings about runs without an output: one a run that no output reaches, one a group that its outputs cannot
 * serve (trains and spans of the proof; `needed` more outputs reaching `sections` would serve), one a group that
 * the search did not decide. Measured and limit of a group: outputs that would serve the runs of the proof,
 * outputs that reach any of them.
 */
export function serviceFindings(runs: readonly OpenRun[], assignment: RunAssignment): Finding[] {
  const at = (index: number) => runs[index] as OpenRun;
  return [
    ...assignment.unreached.map((index) => noneReaches(at(index))),
    ...assignment.unserved.map((group) =>
      group.service.status === "impossible"
        ? tooFew(group, group.runs.map(at))
        : notDecided(group.runs.map(at)),
    ),
  ];
}

function noneReaches(run: OpenRun): Finding {
  return createFinding({
    code: "output-none-reaches",
    severity: "stops",
    span: run.span,
    trains: [run.train],
    sections: ascending(run.sections),
  });
}

function tooFew({ service }: UnservedGroup, members: readonly OpenRun[]): Finding {
  const stuck = (service.extras?.stuck ?? service.core).map((index) => members[index] as OpenRun);
  const outputs = ascending(stuck.flatMap((run) => run.candidates));
  const needed = service.extras?.needed ?? null;
  return createFinding({
    code: "outputs-too-few",
    severity: "stops",
    span: commonSpan(stuck),
    trains: ascending(stuck.map((run) => run.train)),
    sections: service.extras?.sections ?? ascending(stuck.flatMap((run) => run.sections)),
    outputs,
    measured: needed === null ? null : outputs.length + needed,
    limit: outputs.length,
    unit: "outputs",
    needed,
  });
}

/** It stops the session: whether the outputs suffice is not known, so nobody may be told that they do. */
function notDecided(members: readonly OpenRun[]): Finding {
  return createFinding({
    code: "outputs-not-decided",
    severity: "stops",
    span: hull(members),
    trains: ascending(members.map((run) => run.train)),
    sections: ascending(members.flatMap((run) => run.sections)),
  });
}

/** The time that all have in common, or from the first to the last where they have none. */
function commonSpan(runs: readonly OpenRun[]): Interval {
  const startMs = Math.max(...runs.map(({ span }) => span.startMs));
  const endMs = Math.min(...runs.map(({ span }) => span.endMs));
  return startMs < endMs ? { startMs, endMs } : hull(runs);
}

function hull(runs: readonly OpenRun[]): Interval {
  return {
    startMs: Math.min(...runs.map(({ span }) => span.startMs)),
    endMs: Math.max(...runs.map(({ span }) => span.endMs)),
  };
}

function ascending(indexes: readonly number[]): number[] {
  return [...new Set(indexes)].sort((a, b) => a - b);
}
