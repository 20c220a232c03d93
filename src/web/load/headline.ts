import type { CheckReport, FindingReport } from "../../../shared/check.ts";
import { allFeeds, type Feed, feedsOf, strain } from "../plan/feeds.ts";
import { amps, listed, percent } from "../plan/figures.ts";

/** Whether anything trips, in a sentence; then where it is tightest. */
export interface LoadAnswer {
  readonly verdict: CheckReport["verdict"];
  readonly sentence: string;
  readonly tightest: string;
}

export function answerLoad(report: CheckReport): LoadAnswer {
  const feeds = allFeeds(report)
    .filter(({ load }) => load.peakMa > 0)
    .sort((a, b) => strain(b) - strain(a));
  const over = feeds.filter(({ load }) => load.peakMa > load.limitMa);
  const [first] = feeds;
  return {
    verdict: over.length > 0 ? "stopped" : "runs",
    sentence: toSentence(over, feeds),
    tightest: first ? `${first.title} has the least headroom: ${room(first)}.` : "",
  };
}

function toSentence(over: readonly Feed[], feeds: readonly Feed[]): string {
  const [worst] = over;
  if (feeds.length === 0) return "Nothing draws current in this slot.";
  if (!worst) return sayStalls(feeds);
  if (over.length === 1) {
    const does = worst.kind === "district" ? "trips" : "is overloaded";
    return `${worst.title} ${does} at ${worst.load.peakLayout}: ${amps(worst.load.peakMa)} of ${amps(worst.load.limitMa)}.`;
  }
  return `${listed(over.map(({ title }) => title))} take more than they bear.`;
}

/** Nothing is too much as planned; whether it stays so where one locomotive's wheels are held. */
function sayStalls(feeds: readonly Feed[]): string {
  const tripping = feeds.flatMap(({ kind, title, load: { stall, limitMa } }) =>
    stall && stall.ma > limitMa ? [{ kind, title, stall, limitMa }] : [],
  );
  const [first] = tripping;
  if (!first) return "Nothing trips.";
  if (tripping.length > 1)
    return `Nothing trips as planned, but one locomotive that stalled would be too much for ${listed(tripping.map(({ title }) => title))}.`;
  const { kind, title, stall, limitMa } = first;
  const does = kind === "district" ? "trip" : "be overloaded";
  return `Nothing trips as planned, but ${title} would ${does} if locomotive ${stall.locomotive} of train ${stall.train} stalled at ${stall.atLayout}: ${amps(stall.ma)} of ${amps(limitMa)}.`;
}

const room = ({ load }: Feed) => {
  const free = 1 - load.peakMa / load.limitMa;
  return free < 0
    ? `${percent(-free)} too much at ${load.peakLayout}`
    : `${percent(free)} free at ${load.peakLayout}`;
};

/** Codes of findings about currents. */
const OF_CURRENTS = /^(district|supply|output|controller)-(?!none-reaches)/;

/** What the check says of currents, stopping findings first. */
export const loadFindings = (findings: readonly FindingReport[]): FindingReport[] =>
  findings.filter(({ code }) => OF_CURRENTS.test(code));

/** Every feed that draws, districts first, least headroom first in each kind. */
export const drawingFeeds = (report: CheckReport): Feed[] =>
  (["district", "supply", "output", "controller"] as const).flatMap((kind) =>
    feedsOf(kind, report).filter(({ load }) => load.peakMa > 0),
  );
