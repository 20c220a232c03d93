import type { Finding } from "../../src/planner/findings.ts";
import type { Interval, Problem } from "../../src/planner/problem.ts";
import type { CheckResult, LoadReport, NeedReport } from "../../src/planner/result.ts";

/**
 * What a check says, in codes instead of positions and without order, so that results of two plans that mean the
 * same are equal. Assignments are left out where several would do: see `choices`.
 */
export interface Told {
  readonly findings: readonly string[];
  readonly occupations: readonly string[];
  readonly loads: Readonly<Record<string, unknown>>;
  readonly needs: Readonly<Record<string, unknown>>;
  readonly runs: readonly string[];
  readonly busy: readonly string[];
  readonly status: string;
  /** What depends on which of several assignments, or proofs, was taken. */
  readonly choices: readonly string[];
}

type Coded = readonly { readonly code: string }[];

/** Findings that depend on which output a run got, or which proof was found. */
const OF_CHOICE: readonly string[] = [
  "outputs-too-few",
  "output-over-rating",
  "output-too-close",
  "output-trips-on-stall",
  "controller-over-rating",
  "controller-too-close",
];

export function tell(problem: Problem, result: CheckResult): Told {
  const train = (at: number) => problem.trains[at]?.code ?? "?";
  const section = (at: number) => problem.sections[at]?.code ?? "?";
  const codes = (list: Coded, indexes: readonly number[]) => indexes.map((at) => list[at]?.code ?? "?");
  const findings = result.findings.map((finding) => ({
    code: finding.code,
    text: tellFinding(problem, finding),
  }));
  const texts = (ofChoice: boolean) =>
    findings.filter(({ code }) => OF_CHOICE.includes(code) === ofChoice).map(({ text }) => text);
  const loads = (list: Coded, reports: readonly LoadReport[]) =>
    reports.map((report, at): [string, unknown] => [list[at]?.code ?? "?", tellLoad(problem, report)]);
  return {
    findings: texts(false).sort(),
    occupations: result.occupations
      .map(({ section: at, train: of, ...rest }) =>
        JSON.stringify({ section: section(at), train: train(of), ...rest }),
      )
      .sort(),
    loads: Object.fromEntries([
      ...loads(problem.districts, result.districts),
      ...loads(problem.supplies, result.supplies),
    ]),
    needs: Object.fromEntries([
      ...result.handsets.map((need, at): [string, unknown] => [
        problem.commandSystems[at]?.code ?? "?",
        tellNeed(problem, need),
      ]),
      ["outputs", tellNeed(problem, result.analog.need)],
    ]),
    runs: result.analog.runs
      .map((run) =>
        JSON.stringify({
          train: train(run.train),
          span: run.span,
          feeds: run.sections
            .map((at, i) => `${section(at)} ${text(run.sectionSpans[i] as Interval)}`)
            .sort(),
          candidates: codes(problem.outputs, run.candidates).sort(),
          runningMa: run.runningMa,
        }),
      )
      .sort(),
    busy: [
      JSON.stringify(result.pushedTogether),
      ...result.capacity.map(({ section: at, ...rest }) => JSON.stringify({ section: section(at), ...rest })),
    ].sort(),
    status: result.analog.status,
    choices: [
      ...texts(true),
      ...loads(problem.outputs, result.outputs).map((entry) => JSON.stringify(entry)),
      ...loads(problem.controllers, result.controllers).map((entry) => JSON.stringify(entry)),
      ...result.analog.runs.map(
        (run) => `${train(run.train)} ${text(run.span)} ${problem.outputs[run.output]?.code ?? "none"}`,
      ),
    ].sort(),
  };
}

function tellFinding(problem: Problem, finding: Finding): string {
  const codes = (list: Coded, indexes: readonly number[]) =>
    indexes.map((at) => list[at]?.code ?? "?").sort();
  return JSON.stringify({
    ...finding,
    trains: codes(problem.trains, finding.trains),
    sections: codes(problem.sections, finding.sections),
    districts: codes(problem.districts, finding.districts),
    supplies: codes(problem.supplies, finding.supplies),
    outputs: codes(problem.outputs, finding.outputs),
    controllers: codes(problem.controllers, finding.controllers),
    commandSystems: codes(problem.commandSystems, finding.commandSystems),
    locomotives: codes(problem.locomotives, finding.locomotives),
    rakes: codes(problem.rakes, finding.rakes),
    shares: tellShares(problem, finding.shares),
  });
}

function tellLoad(problem: Problem, report: LoadReport) {
  const trains = (list: readonly number[]) => list.map((at) => problem.trains[at]?.code ?? "?").sort();
  const { stall, restart } = report;
  return {
    ...report,
    shares: tellShares(problem, report.shares),
    stall: stall && {
      ...stall,
      locomotive: problem.locomotives[stall.locomotive]?.code,
      train: problem.trains[stall.train]?.code,
    },
    // of several ways to group them any will do
    restart: restart && {
      ...restart,
      trains: trains(restart.trains),
      groups: restart.groups?.length ?? null,
      tooBig: trains(restart.tooBig),
    },
  };
}

function tellNeed(problem: Problem, need: NeedReport) {
  return { ...need, trains: need.trains.map((at) => problem.trains[at]?.code ?? "?").sort() };
}

function tellShares(problem: Problem, shares: Finding["shares"]): string[] {
  return shares.map(({ train, ma }) => `${problem.trains[train]?.code ?? "?"} ${ma}`).sort();
}

function text({ startMs, endMs }: Interval): string {
  return `${startMs}-${endMs}`;
}
