import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { check } from "../../src/planner/check.ts";
import type { Problem } from "../../src/planner/problem.ts";
import type { AnalogReport } from "../../src/planner/result.ts";
import { judgeAssignment } from "../../src/planner/verify/judge-assignment.ts";
import { judgeCore } from "../../src/planner/verify/judge-core.ts";
import { PLAIN, plainDecoder } from "../planner/plain-records.ts";

/** A plan on file and what must come of it, however it is come by: every mistake that was put right leaves one. */
interface Case {
  readonly about: string;
  readonly problem: Problem;
  readonly expected: {
    readonly status: AnalogReport["status"];
    /** Codes of all findings, in alphabetical order. */
    readonly findings: readonly string[];
    /** Extra outputs asked for, one a shortage. */
    readonly needed: readonly number[];
    /** Runs that the proof is made of. */
    readonly core?: number;
  };
}

/** What cases on file do not say makes no finding. */
function completed(problem: Problem): Problem {
  const all = <T>(records: readonly T[], plain: object) => records.map((one) => ({ ...plain, ...one }));
  return {
    ...PLAIN.problem,
    ...problem,
    policy: { ...PLAIN.policy, ...problem.policy },
    sections: all(problem.sections, PLAIN.section),
    commandSystems: all(problem.commandSystems, PLAIN.commandSystem),
    supplies: all(problem.supplies, PLAIN.supply),
    districts: all(problem.districts, PLAIN.district),
    locomotives: problem.locomotives.map((one, at) => ({
      ...PLAIN.locomotive,
      ...one,
      decoder: one.decoder ?? plainDecoder(at),
    })),
    rakes: all(problem.rakes, PLAIN.rake),
    trains: all(problem.trains, PLAIN.train),
  };
}

const folder = import.meta.dirname;
const cases = readdirSync(folder)
  .filter((name) => name.endsWith(".json"))
  .map((name) => JSON.parse(readFileSync(join(folder, name), "utf8")) as Case)
  .map((one): Case => ({ ...one, problem: completed(one.problem) }));

test("there are cases on file", () => {
  expect(cases.length).toBeGreaterThan(5);
});

describe.each(cases)("$about", ({ problem, expected }) => {
  const { analog, findings } = check(problem);

  test("is answered so", () => {
    expect(findings.map(({ code }) => code).sort()).toEqual(expected.findings);
    expect(findings.flatMap(({ needed }) => needed ?? [])).toEqual(expected.needed);
    expect(analog.status).toBe(expected.status);
    expect(analog.core).toHaveLength(expected.core ?? 0);
  });

  test("and the answer stands before the judge", () => {
    expect(judgeAssignment(problem, analog)).toEqual([]);
    if (analog.status === "impossible") expect(judgeCore(problem, analog, 10_000_000)).toBe("proven");
  });
});
