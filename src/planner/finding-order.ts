import type { Finding } from "./findings.ts";

/**
 * A total order: what stops first, then by start, code, trains, and all the rest that tells two findings apart. Codes
 * compare by code unit, lists item by item, a list before its continuations.
 */
export function compareFindings(a: Finding, b: Finding): number {
  return (
    rank(a) - rank(b) ||
    a.span.startMs - b.span.startMs ||
    compareText(a.code, b.code) ||
    compareLists(a.trains, b.trains) ||
    (a.pathEntry ?? -1) - (b.pathEntry ?? -1) ||
    compareLists(a.sections, b.sections) ||
    compareLists(a.districts, b.districts) ||
    compareLists(a.supplies, b.supplies) ||
    compareLists(a.outputs, b.outputs) ||
    compareLists(a.controllers, b.controllers) ||
    compareLists(a.commandSystems, b.commandSystems) ||
    compareLists(a.locomotives, b.locomotives) ||
    compareLists(a.rakes, b.rakes) ||
    compareLists(a.members, b.members) ||
    compareLists(a.handsets, b.handsets) ||
    a.span.endMs - b.span.endMs ||
    a.atMs - b.atMs ||
    (a.measured ?? -1) - (b.measured ?? -1) ||
    (a.limit ?? -1) - (b.limit ?? -1)
  );
}

function rank(finding: Finding): number {
  return finding.severity === "stops" ? 0 : 1;
}

function compareText(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

function compareLists(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length && i < b.length; i++) {
    const by = (a[i] as number) - (b[i] as number);
    if (by !== 0) return by;
  }
  return a.length - b.length;
}
