import { scaleLinear } from "d3-scale";
import { useMemo } from "preact/hooks";
import type { NeedReport } from "../../../shared/check.ts";
import { valueAt } from "../charts/curve.ts";
import { stepArea, stepLine } from "../charts/paths.ts";
import { valueTicks } from "../charts/ticks.ts";
import { look } from "../plan/emphasis.ts";
import { duration } from "../plan/figures.ts";
import { lacks, type Need } from "../plan/needs.ts";
import { TimeGrid, ValueAxis } from "./axes.tsx";
import { DataTable } from "./data-table.tsx";
import { Picture } from "./picture.tsx";
import { Plot } from "./plot.tsx";
import { useLooking } from "./stage.ts";

const HEIGHT = 104;
/** Room over the highest mark for its words, and under zero for half its figure; px. */
const [HEAD_ROOM, FOOT_ROOM] = [18, 6];

function statement(title: string, need: NeedReport): string {
  if (need.peak === 0) return `${title}: none needed in this slot`;
  const lacking = need.peak - need.stock;
  const end = lacking > 0 ? `, ${lacking} too few` : "";
  return `${title}: at most ${need.peak} of ${need.stock} needed at once, at ${need.peakLayout}${end}`;
}

/** Need over the slot as a step line against the stock as a rule. */
export function NeedPicture({ need: needed }: { readonly need: Need }) {
  const { id, title, unit, report: need } = needed;
  const { view } = useLooking();
  const finding = view.chosen.value?.finding;
  const heading = statement(title, need);
  const say = (ms: number) => `${valueAt(need.curve, ms)} of ${need.stock} ${unit}`;
  return (
    <Picture
      id={id}
      heading={heading}
      now={say}
      isConcerned={finding !== undefined && lacks(finding, needed)}
      table={<NeedTable need={needed} />}
      note={
        need.overSeconds > 0 && (
          <p class="picture-note note-stops">Too few for {duration(need.overSeconds)} of real time</p>
        )
      }
    >
      <Plot label={heading} height={HEIGHT} say={say}>
        <NeedMarks need={need} unit={unit} />
      </Plot>
      <PeakTrains need={need} />
    </Picture>
  );
}

function NeedTable({ need: { title, report } }: { readonly need: Need }) {
  const { view } = useLooking();
  return (
    <DataTable
      caption={`${title}, step by step`}
      columns={[
        { head: "Layout time" },
        { head: "Room clock" },
        { head: "Needed", isFigure: true },
        { head: "In stock", isFigure: true },
      ]}
      rows={() =>
        report.curve.map(([ms, n]) => [
          view.clocks.layoutText(ms),
          view.clocks.roomText(ms),
          String(n),
          String(report.stock),
        ])
      }
    />
  );
}

function PeakTrains({ need: { trains } }: { readonly need: NeedReport }) {
  const { view } = useLooking();
  const emphasis = view.emphasis.value;
  if (trains.length === 0) return null;
  return (
    <p class="shares-words">
      <span class="shares-lead">At the peak for trains</span>{" "}
      {trains.map((train) => (
        <b key={train} class={`share-word ${look(emphasis, train)}`}>
          {train}
        </b>
      ))}
    </p>
  );
}

function NeedMarks({ need, unit }: { readonly need: NeedReport; readonly unit: string }) {
  const { view, stage } = useLooking();
  const x = stage.x.value;
  const window = view.window.value;
  const top = Math.max(1, need.stock, need.peak);
  const y = useMemo(() => scaleLinear([0, top], [HEIGHT - FOOT_ROOM, HEAD_ROOM]), [top]);
  const moment = view.moment.value;
  const isShown = moment >= window.fromMs && moment <= window.toMs;
  const line = useMemo(() => stepLine(need.curve, window, x, y), [need, window, x, y]);
  const under = useMemo(() => stepArea(need.curve, 0, window, x, y), [need, window, x, y]);
  const over = useMemo(
    () => (need.peak > need.stock ? stepArea(need.curve, need.stock, window, x, y) : ""),
    [need, window, x, y],
  );
  return (
    <>
      <TimeGrid height={HEIGHT} />
      <ValueAxis ticks={valueTicks(top, 4, true)} y={y} text={String} unit="" />
      <path class="load-under" d={under} />
      <path class="load-line" d={line} />
      {over && <path class="load-over" d={over} />}
      <path class="rule rule-limit" d={`M${stage.left.value},${y(need.stock)}H${stage.right.value}`} />
      <text class="rule-name" x={stage.right.value} y={y(need.stock) - 5} text-anchor="end">
        {need.stock} {unit} in stock
      </text>
      {isShown && <circle class="now-dot" cx={x(moment)} cy={y(valueAt(need.curve, moment))} r="4" />}
    </>
  );
}
