import { scaleLinear } from "d3-scale";
import { useId, useMemo } from "preact/hooks";
import type { GraphLine } from "../../../shared/check.ts";
import { positionAt } from "../charts/curve.ts";
import { bendLine, type Scale } from "../charts/paths.ts";
import type { TimeWindow } from "../charts/ticks.ts";
import { placeTrainLabels, type TrainLabel } from "../charts/train-labels.ts";
import { look } from "../plan/emphasis.ts";
import { RoomAxis, TimeGrid } from "./axes.tsx";
import { useLooking } from "./stage.ts";

/** Free over the first place and under the last, px. */
const MARGIN_PX = 18;
/** Closer than this, a place's name would cover the one before. */
const NAME_PX = 13;

interface GraphMarksProps {
  readonly line: GraphLine;
  readonly height: number;
}

export function GraphMarks({ line, height }: GraphMarksProps) {
  const { view, stage } = useLooking();
  const clip = useId();
  const x = stage.x.value;
  const window = view.window.value;
  const y = useMemo(() => {
    const places = line.stops.map(({ atMm }) => atMm);
    return scaleLinear([Math.min(...places), Math.max(...places)], [MARGIN_PX, height - MARGIN_PX]);
  }, [line, height]);
  const shown = useMemo(() => trainsIn(line, window), [line, window]);
  const every = useMemo(() => shown.map(({ points }) => bendLine(points, x, y)).join(""), [shown, x, y]);
  const [left, right] = [stage.left.value, stage.right.value];
  const isAnyChosen = view.emphasis.value.trains.size > 0;
  return (
    <>
      <TimeGrid height={height} />
      <Places line={line} y={y} />
      <clipPath id={clip}>
        <rect x={left} y="0" width={Math.max(0, right - left)} height={height} />
      </clipPath>
      <g clip-path={`url(#${clip})`}>
        <path class={isAnyChosen ? "train train-faded" : "train"} d={every} />
        <ChosenTrains shown={shown} x={x} y={y} />
        <NowDots shown={shown} x={x} y={y} />
      </g>
      <Numbers shown={shown} x={x} y={y} height={height} />
      <RoomAxis top={height} />
    </>
  );
}

type GraphTrains = GraphLine["trains"];

function trainsIn(line: GraphLine, { fromMs, toMs }: TimeWindow): GraphTrains {
  return line.trains.filter(
    ({ points }) => (points[0]?.[0] ?? toMs) < toMs && (points.at(-1)?.[0] ?? fromMs) > fromMs,
  );
}

function Places({ line, y }: { readonly line: GraphLine; readonly y: Scale }) {
  const { stage } = useLooking();
  const [left, right] = [stage.left.value, stage.right.value];
  const isNarrow = stage.isNarrow.value;
  let last = Number.NEGATIVE_INFINITY;
  const named = line.stops.map((stop) => {
    const isFree = y(stop.atMm) - last >= NAME_PX;
    if (isFree) last = y(stop.atMm);
    return { ...stop, isFree };
  });
  return (
    <g class="places">
      <path class="place" d={named.map(({ atMm }) => `M${left},${y(atMm).toFixed(1)}H${right}`).join("")} />
      {named
        .filter(({ isFree }) => isFree)
        .map(({ place, name, atMm }) =>
          isNarrow ? (
            <text key={place} class="place-name place-name-inside" x={left - 44} y={y(atMm) - 4}>
              {name}
            </text>
          ) : (
            <text key={place} class="place-name" x={left - 8} y={y(atMm) + 4} text-anchor="end">
              {shortened(name, 17)}
              <title>{name}</title>
            </text>
          ),
        )}
    </g>
  );
}

function shortened(name: string, most: number): string {
  return name.length <= most ? name : `${name.slice(0, most - 1).trimEnd()}…`;
}

interface DrawnProps {
  readonly shown: GraphTrains;
  readonly x: Scale;
  readonly y: Scale;
}

function ChosenTrains({ shown, x, y }: DrawnProps) {
  const { view } = useLooking();
  const emphasis = view.emphasis.value;
  return (
    <>
      {shown
        .filter(({ train }) => emphasis.trains.has(train))
        .map(({ train, points }) => (
          <path
            key={`${train} ${points[0]?.[0]}`}
            class={`train train-chosen ${look(emphasis, train)}`}
            data-train={train}
            d={bendLine(points, x, y)}
          />
        ))}
    </>
  );
}

/** Where each train is at the moment. */
function NowDots({ shown, x, y }: DrawnProps) {
  const { view } = useLooking();
  const emphasis = view.emphasis.value;
  const moment = view.moment.value;
  return (
    <>
      {shown.map(({ train, points }) => {
        const mm = positionAt(points, moment);
        if (mm === null) return null;
        const chosen = look(emphasis, train);
        return (
          <circle
            key={`${train} ${points[0]?.[0]}`}
            class={`now-dot ${chosen}`}
            cx={x(moment)}
            cy={y(mm)}
            r={chosen ? 5 : 3}
          />
        );
      })}
    </>
  );
}

/** Train numbers along their lines, those of the chosen finding first. */
function Numbers({ shown, x, y, height }: DrawnProps & { readonly height: number }) {
  const { view, stage } = useLooking();
  const emphasis = view.emphasis.value;
  const [left, right] = [stage.left.value, stage.right.value];
  const labels = useMemo((): TrainLabel[] => {
    const isChosen = (train: string) => Number(emphasis.trains.has(train));
    const drawn = shown
      .map(({ train, points }) => ({
        train,
        points: points.map(([ms, mm]) => [x(ms), y(mm)] as const),
      }))
      .sort((a, b) => isChosen(b.train) - isChosen(a.train));
    return placeTrainLabels(drawn, { left, right, top: 0, bottom: height });
  }, [shown, x, y, emphasis, left, right, height]);
  return (
    <g class={emphasis.trains.size > 0 ? "numbers numbers-faded" : "numbers"}>
      {labels.map(({ train, x: lx, y: ly, angle }) => (
        <text
          key={`${train} ${lx} ${ly}`}
          class={`number ${look(emphasis, train)}`}
          text-anchor="middle"
          transform={`translate(${lx.toFixed(1)},${ly.toFixed(1)}) rotate(${angle.toFixed(1)})`}
          dy="4"
        >
          {train}
        </text>
      ))}
    </g>
  );
}
