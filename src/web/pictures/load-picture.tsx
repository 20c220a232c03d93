import { scaleLinear } from "d3-scale";
import type { ComponentChildren } from "preact";
import { useMemo } from "preact/hooks";
import { valueAt } from "../charts/curve.ts";
import { stepArea, stepLine } from "../charts/paths.ts";
import { valueTicks } from "../charts/ticks.ts";
import { concerns, FEED_WORDS, type Feed, strain } from "../plan/feeds.ts";
import { amps, duration, percent } from "../plan/figures.ts";
import { TimeGrid, ValueAxis } from "./axes.tsx";
import { DataTable } from "./data-table.tsx";
import { PeakShares } from "./peak-shares.tsx";
import { Picture } from "./picture.tsx";
import { Plot } from "./plot.tsx";
import { useLooking } from "./stage.ts";

const HEIGHT = 132;
/** Room over the highest mark for its words, and under zero for half its figure; px. */
const [HEAD_ROOM, FOOT_ROOM] = [18, 6];

function statement({ title, load }: Feed, before?: Feed): string {
  const peaks = `${title} peaks at ${amps(load.peakMa)} of ${amps(load.limitMa)} at ${load.peakLayout}`;
  const less = before ? before.load.peakMa - load.peakMa : 0;
  if (less === 0) return peaks;
  return `${peaks}, ${amps(Math.abs(less))} ${less > 0 ? "less" : "more"} than as it is`;
}

function Note({ feed }: { readonly feed: Feed }) {
  const { load, kind } = feed;
  const free = 1 - strain(feed);
  if (load.peakMa > load.limitMa)
    return (
      <p class="picture-note note-stops">
        {kind === "district" ? "It trips" : "It is overloaded"}: above {amps(load.limitMa)} for{" "}
        {duration(load.overLimitSeconds)}
      </p>
    );
  if (load.peakMa > load.reserveMa)
    return <p class="picture-note note-warns">Into the reserve for {duration(load.overReserveSeconds)}</p>;
  return <p class="picture-note">{percent(free)} free at the peak</p>;
}

interface LoadPictureProps {
  readonly feed: Feed;
  /** The same feed as it is, where another way is being tried. */
  readonly before?: Feed | undefined;
  /** Under the shares of the peak. */
  readonly children?: ComponentChildren;
}

/** Load of one feed over the slot: a step line, its limit and its reserve as rules, the peak marked. */
export function LoadPicture({ feed, before, children }: LoadPictureProps) {
  const { view } = useLooking();
  const { load } = feed;
  const finding = view.chosen.value?.finding;
  const say = (ms: number) => `${amps(valueAt(load.curve, ms))} of ${amps(load.limitMa)}`;
  const heading = statement(feed, before);
  return (
    <Picture
      id={feed.id}
      heading={heading}
      now={say}
      note={<Note feed={feed} />}
      isConcerned={finding !== undefined && concerns(finding, feed)}
      table={<LoadTable feed={feed} />}
    >
      <Plot label={heading} height={HEIGHT} say={say}>
        <LoadMarks feed={feed} before={before} />
      </Plot>
      <PeakShares load={load} />
      {children}
    </Picture>
  );
}

function LoadTable({ feed: { title, load } }: { readonly feed: Feed }) {
  const { view } = useLooking();
  return (
    <DataTable
      caption={`Load of ${title}, step by step`}
      columns={[
        { head: "Layout time" },
        { head: "Room clock" },
        { head: "Load, A", isFigure: true },
        { head: "Free, A", isFigure: true },
      ]}
      rows={() =>
        load.curve.map(([ms, ma]) => [
          view.clocks.layoutText(ms),
          view.clocks.roomText(ms),
          (ma / 1_000).toFixed(3),
          ((load.limitMa - ma) / 1_000).toFixed(3),
        ])
      }
    />
  );
}

function LoadMarks({ feed, before }: Pick<LoadPictureProps, "feed" | "before">) {
  const { view, stage } = useLooking();
  const { load } = feed;
  const x = stage.x.value;
  const window = view.window.value;
  const top = Math.max(load.limitMa, load.peakMa, before?.load.peakMa ?? 0);
  const y = useMemo(() => scaleLinear([0, top], [HEIGHT - FOOT_ROOM, HEAD_ROOM]), [top]);
  const paths = useMemo(
    () => ({
      under: stepArea(load.curve, 0, window, x, y),
      line: stepLine(load.curve, window, x, y),
      over: load.peakMa > load.limitMa ? stepArea(load.curve, load.limitMa, window, x, y) : "",
      before: before ? stepLine(before.load.curve, window, x, y) : "",
    }),
    [load, before, window, x, y],
  );
  return (
    <>
      <TimeGrid height={HEIGHT} />
      <ValueAxis
        ticks={valueTicks(top / 1_000, 4).map((a) => a * 1_000)}
        y={y}
        text={(ma) => String(ma / 1_000)}
        unit="A"
      />
      <path class="load-under" d={paths.under} />
      {paths.before && <path class="load-before" d={paths.before} />}
      <path class="load-line" d={paths.line} />
      {paths.over && <path class="load-over" d={paths.over} />}
      <Rules feed={feed} y={y} />
      <Peak feed={feed} y={y} />
      <NowDot feed={feed} y={y} />
    </>
  );
}

interface MarksProps {
  readonly feed: Feed;
  readonly y: (ma: number) => number;
}

function Rules({ feed: { load, kind }, y }: MarksProps) {
  const { stage } = useLooking();
  const [left, right] = [stage.left.value, stage.right.value];
  return (
    <g class="rules">
      <path class="rule rule-reserve" d={`M${left},${y(load.reserveMa)}H${right}`} />
      <path class="rule rule-limit" d={`M${left},${y(load.limitMa)}H${right}`} />
      <text class="rule-name" x={right} y={y(load.limitMa) - 5} text-anchor="end">
        {FEED_WORDS[kind].limit} {amps(load.limitMa)}
      </text>
      <text class="rule-name" x={left + 4} y={y(load.reserveMa) - 4}>
        reserve above {amps(load.reserveMa)}
      </text>
    </g>
  );
}

function Peak({ feed: { load }, y }: MarksProps) {
  const { view, stage } = useLooking();
  const { fromMs, toMs } = view.window.value;
  if (load.peakAtMs < fromMs || load.peakAtMs >= toMs) return null;
  return <path class="peak" d={`M${stage.x.value(load.peakAtMs)},${y(load.peakMa)}l-5,-8h10z`} />;
}

function NowDot({ feed: { load }, y }: MarksProps) {
  const { view, stage } = useLooking();
  const { fromMs, toMs } = view.window.value;
  const moment = view.moment.value;
  if (moment < fromMs || moment > toMs) return null;
  return <circle class="now-dot" cx={stage.x.value(moment)} cy={y(valueAt(load.curve, moment))} r="4" />;
}
