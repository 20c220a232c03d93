import type { EstimateRow, Estimates } from "../../../shared/estimates.ts";
import { READING_STATES, type Reading, type ReadingState } from "../../../shared/readings.ts";
import type { CurrentFigure, Locomotive } from "../../../shared/roster.ts";
import { currentsRead } from "../../planner/measured/currents-read.ts";
import { estimateCurrent, robust } from "../../planner/measured/estimate.ts";

/** What is known of each locomotive in each state: the roster's figure, what meters showed, and which of them counts. */
export function toEstimates(locomotives: readonly Locomotive[], readings: readonly Reading[]): Estimates {
  const read = currentsRead(readings);
  const items = locomotives.flatMap((locomotive) =>
    READING_STATES.map((state) => toRow(locomotive, state, read(locomotive.code, state))),
  );
  return { headline: toHeadline(items), items };
}

function toRow(locomotive: Locomotive, state: ReadingState, readings: readonly number[]): EstimateRow {
  const figure = FIGURES[state](locomotive);
  const found = robust(readings);
  const { ma, lowMa, highMa, measured } = estimateCurrent(figure, readings);
  return {
    locomotive: locomotive.code,
    name: locomotive.name,
    state,
    rosterMa: figure.ma,
    source: figure.source,
    readings: readings.length,
    medianMa: found === null ? null : found.median,
    spreadMa: found && Math.round(found.spread * 10) / 10,
    usedMa: ma,
    lowMa,
    highMa,
    measured,
  };
}

const FIGURES = {
  running: (locomotive) => locomotive.running,
  standing: (locomotive) => locomotive.standing,
  stalled: (locomotive) => locomotive.stall,
  inrush: (locomotive) => locomotive.inrush,
} as const satisfies Record<ReadingState, (locomotive: Locomotive) => CurrentFigure>;

function toHeadline(items: readonly EstimateRow[]): string {
  const running = items.filter(({ state }) => state === "running");
  if (running.length === 0) return "There are no locomotives to measure yet.";
  const measured = running.filter((item) => item.measured).length;
  return `What ${measured} of ${running.length} locomotives draw while they run was measured; the rest is assumed.`;
}
