import type { CheckReport, FindingReport, HandsetSharingReport, Span } from "../../../shared/check.ts";
import type { Finding } from "../../planner/findings.ts";
import type { Interval } from "../../planner/problem.ts";
import type {
  AnalogReport,
  CheckResult,
  HandsetSharing,
  LoadReport,
  NeedReport,
  RestartReport,
  StallReport,
} from "../../planner/result.ts";
import { type SlotFrame, toInstantText, toLayoutText } from "./clock.ts";
import { toGraph } from "./graph.ts";
import type { PreparedPlan } from "./mapper.ts";
import { word } from "./sentences.ts";
import { number } from "./wording.ts";

interface Named {
  readonly code: string;
  readonly name: string;
}

/** The planner answers in the order it was asked, so this never shows. */
const UNNAMED = { code: "?", name: "?" };

/** What the planner found, in the words, codes and clocks of people: the answer of both check routes. */
export function toCheckReport(plan: PreparedPlan, result: CheckResult): CheckReport {
  const { problem, source } = plan;
  const { frame } = source;
  const { layout } = source;
  const stops = result.findings.filter((f) => f.severity === "stops").length;
  const warnings = result.findings.length - stops;
  const loads = (reports: readonly LoadReport[], records: readonly Named[]) =>
    reports.map((report, i) => toLoad(report, records[i] ?? UNNAMED, plan));
  return {
    verdict: stops === 0 ? "runs" : "stopped",
    headline: toHeadline(plan, stops, warnings, result),
    stops,
    warnings,
    slot: toSpan(problem.slot, frame),
    clockRatio: frame.clockRatio,
    findings: result.findings.map((finding) => toFinding(finding, plan)),
    findingsLeftOut: result.findingsLeftOut,
    complete: result.complete,
    trains: plan.trains.map((train, i) => ({
      code: train.code,
      name: train.name,
      lengthMm: problem.trains[i]?.lengthMm ?? 0,
      departs: toLayoutText(frame, problem.trains[i]?.path[0]?.departMs ?? 0),
      arrives: toLayoutText(frame, problem.trains[i]?.path.at(-1)?.arriveMs ?? 0),
    })),
    trainsNotInSlot: [...plan.trainsNotInSlot],
    sections: problem.sections.map(({ code, control }, i) => ({
      code,
      name: layout.sections[i]?.name ?? code,
      control,
    })),
    occupations: result.occupations.map((o) => ({
      section: problem.sections[o.section]?.code ?? "?",
      train: problem.trains[o.train]?.code ?? "?",
      pathEntry: o.pathEntry,
      enterMs: o.enterMs,
      clearMs: o.clearMs,
      blockedFromMs: o.blocked.startMs,
      blockedToMs: o.blocked.endMs,
    })),
    graph: toGraph(plan),
    districts: loads(result.districts, layout.districts),
    supplies: loads(result.supplies, layout.supplies),
    outputs: loads(
      result.outputs,
      layout.controllers.flatMap((c) => c.outputs),
    ),
    controllers: loads(result.controllers, layout.controllers),
    handsets: result.handsets.map((need, i) => ({
      ...toNeed(need, layout.commandSystems[i] ?? UNNAMED, plan),
      sharing: toSharing(need.sharing, plan),
    })),
    outputNeed: toNeed(result.analog.need, { code: "outputs", name: "Controller outputs" }, plan),
    analog: toAnalog(result.analog, plan),
    capacity: result.capacity.map(({ section, busyMs, ...rest }) => ({
      ...rest,
      section: problem.sections[section]?.code ?? "?",
      busySeconds: busyMs / 1_000,
    })),
    pushedTogether: {
      seconds: result.pushedTogether.ms / 1_000,
      share: result.pushedTogether.share,
    },
  };
}

function toHeadline(
  plan: PreparedPlan,
  stops: number,
  warnings: number,
  { findingsLeftOut, complete }: CheckResult,
): string {
  if (plan.trains.length === 0) return "No train departs in this slot, so there is nothing to stop it.";
  const warn = warnings === 0 ? "" : ` ${number(warnings, "warning")}.`;
  const further = `${complete ? "" : "At least "}${number(findingsLeftOut, "further finding")} not listed.`;
  const more = findingsLeftOut === 0 ? "" : ` ${further}`;
  if (stops === 0) return `This night runs.${warn}${more}`;
  return `${number(stops, "thing")} ${stops === 1 ? "stops" : "stop"} this night.${warn}${more}`;
}

function toSpan(interval: Interval, frame: SlotFrame): Span {
  return {
    startMs: interval.startMs,
    endMs: interval.endMs,
    layoutStart: toLayoutText(frame, interval.startMs),
    layoutEnd: toLayoutText(frame, interval.endMs),
    startsAt: toInstantText(frame, interval.startMs),
    endsAt: toInstantText(frame, interval.endMs),
  };
}

function codesOf(records: readonly { readonly code: string }[], indexes: readonly number[]): string[] {
  return indexes.map((i) => records[i]?.code ?? "?");
}

function toFinding(finding: Finding, { problem, source }: PreparedPlan): FindingReport {
  const systemNames = source.layout.commandSystems.map(({ name }) => name);
  const { sentence, cure } = word(finding, { ...problem, systemNames }, (ms) =>
    toLayoutText(source.frame, ms),
  );
  return {
    code: finding.code,
    severity: finding.severity,
    sentence,
    cure,
    span: toSpan(finding.span, source.frame),
    atMs: finding.atMs,
    trains: codesOf(problem.trains, finding.trains),
    sections: codesOf(problem.sections, finding.sections),
    districts: codesOf(problem.districts, finding.districts),
    supplies: codesOf(problem.supplies, finding.supplies),
    outputs: codesOf(problem.outputs, finding.outputs),
    controllers: codesOf(problem.controllers, finding.controllers),
    commandSystems: codesOf(problem.commandSystems, finding.commandSystems),
    locomotives: codesOf(problem.locomotives, finding.locomotives),
    rakes: codesOf(problem.rakes, finding.rakes),
    members: codesOf(problem.crew.members, finding.members),
    handsets: codesOf(problem.handsets, finding.handsets),
    measured: finding.measured,
    limit: finding.limit,
    unit: finding.unit,
    overSeconds: finding.overMs === null ? null : finding.overMs / 1_000,
    shares: finding.shares.map(({ train, ma }) => ({ train: problem.trains[train]?.code ?? "?", ma })),
    pathEntry: finding.pathEntry,
    needed: finding.needed,
  };
}

function toLoad(
  report: LoadReport,
  { code, name }: Named,
  plan: PreparedPlan,
): CheckReport["districts"][number] {
  return {
    code,
    name,
    limitMa: report.limitMa,
    reserveMa: report.reserveMa,
    peakMa: report.peakMa,
    peakAtMs: report.peakAtMs,
    peakLayout: toLayoutText(plan.source.frame, report.peakAtMs),
    lowMa: report.lowMa,
    highMa: report.highMa,
    measuredMa: report.measuredMa,
    assumedMa: report.assumedMa,
    constantMa: report.constantMa,
    overLimitSeconds: report.overLimitMs / 1_000,
    overReserveSeconds: report.overReserveMs / 1_000,
    shares: report.shares.map(({ train, ma }) => ({ train: plan.problem.trains[train]?.code ?? "?", ma })),
    curve: report.curve.map(([at, ma]) => [at, ma]),
    stall: report.stall && toStall(report.stall, plan),
    restart: report.restart && toRestart(report.restart, plan),
  };
}

function toStall({ ma, atMs, locomotive, train }: StallReport, { problem, source }: PreparedPlan) {
  return {
    ma,
    atMs,
    atLayout: toLayoutText(source.frame, atMs),
    locomotive: problem.locomotives[locomotive]?.code ?? "?",
    train: problem.trains[train]?.code ?? "?",
  };
}

function toRestart(report: RestartReport, { problem, source }: PreparedPlan) {
  return {
    inrushMa: report.inrushMa,
    atMs: report.atMs,
    atLayout: toLayoutText(source.frame, report.atMs),
    trains: codesOf(problem.trains, report.trains),
    holds: report.holds,
    isWithin: report.isWithin,
    groups: report.groups?.map((group) => codesOf(problem.trains, group)) ?? null,
    proven: report.proven,
    tooBig: codesOf(problem.trains, report.tooBig),
  };
}

function toNeed(need: NeedReport, { code, name }: Named, plan: PreparedPlan): CheckReport["outputNeed"] {
  return {
    code,
    name,
    stock: need.stock,
    peak: need.peak,
    peakAtMs: need.peakAtMs,
    peakLayout: toLayoutText(plan.source.frame, need.peakAtMs),
    trains: codesOf(plan.problem.trains, need.trains),
    overSeconds: need.overMs / 1_000,
    curve: need.curve.map(([at, count]) => [at, count]),
  };
}

function toSharing(
  { status, turns }: HandsetSharing,
  { problem, source }: PreparedPlan,
): HandsetSharingReport {
  return {
    status,
    turns: turns.map(({ train, span, handset, isClaimed }) => ({
      train: problem.trains[train]?.code ?? "?",
      span: toSpan(span, source.frame),
      handset: problem.handsets[handset]?.code ?? "?",
      isClaimed,
    })),
  };
}

function toAnalog(analog: AnalogReport, { problem, source }: PreparedPlan): CheckReport["analog"] {
  return {
    status: analog.status,
    runs: analog.runs.map((run) => ({
      train: problem.trains[run.train]?.code ?? "?",
      span: toSpan(run.span, source.frame),
      sections: run.sections.map((section, i) => ({
        section: problem.sections[section]?.code ?? "?",
        fromMs: run.sectionSpans[i]?.startMs ?? run.span.startMs,
        toMs: run.sectionSpans[i]?.endMs ?? run.span.endMs,
      })),
      candidates: codesOf(problem.outputs, run.candidates),
      runningMa: run.runningMa,
      output: run.output < 0 ? null : (problem.outputs[run.output]?.code ?? null),
    })),
    core: [...analog.core],
  };
}
