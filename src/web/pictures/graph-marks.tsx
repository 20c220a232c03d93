import { scaleLinear } from "d3-scale";
import { useId, useMemo } from "preact/hooks";
import type { GraphLine } from "../../../shared/check.ts";
import { positionAt } from "../charts/curve.ts";
import { bendLine, type Scale } from "../charts/paths.ts";
import type { TimeWindow } from "../charts/ticks.ts";
import { type Box, placeTrainLabels, type TrainLabel } from "../charts/train-labels.ts";
import { look } from "../plan/emphasis.ts";
import { RoomAxis, TimeGrid } from "./axes.tsx";
import { nameBoxes, PlaceNames, PlaceRules } from "./places.tsx";
import { useLooking } from "./stage.ts";

/** Free over the first place and under the last, px. */
const MARGIN_PX = 18;

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
  const frame = useMemo(() => ({ left, right, top: 0, bottom: height }), [left, right, height]);
  const isNarrow = stage.isNarrow.value;
  const taken = useMemo(() => (isNarrow ? nameBoxes(line, y) : []), [isNarrow, line, y]);
  const isAnyChosen = view.emphasis.value.trains.size > 0;
  return (
    <>
      <TimeGrid height={height} />
      <PlaceRules line={line} y={y} />
      <clipPath id={clip}>
        <rect x={left} y="0" width={Math.max(0, right - left)} height={height} />
      </clipPath>
      <g clip-path={`url(#${clip})`}>
        <path class={isAnyChosen ? "train train-faded" : "train"} d={every} />
        <ChosenTrains shown={shown} x={x} y={y} />
        <NowDots shown={shown} x={x} y={y} />
      </g>
      <PlaceNames line={line} y={y} />
      <Numbers shown={shown} x={x} y={y} frame={frame} taken={taken} />
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

interface NumbersProps extends DrawnProps {
  readonly frame: Box;
  /** Where other words stand. */
  readonly taken: readonly Box[];
}

/** Train numbers along their lines, those of the chosen finding first. */
function Numbers({ shown, x, y, frame, taken }: NumbersProps) {
  const { view } = useLooking();
  const emphasis = view.emphasis.value;
  const labels = useMemo((): TrainLabel[] => {
    const isChosen = (train: string) => Number(emphasis.trains.has(train));
    const drawn = shown
      .map(({ train, points }) => ({
        train,
        points: points.map(([ms, mm]) => [x(ms), y(mm)] as const),
      }))
      .sort((a, b) => isChosen(b.train) - isChosen(a.train));
    return placeTrainLabels(drawn, frame, taken);
  }, [shown, x, y, emphasis, frame, taken]);
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
