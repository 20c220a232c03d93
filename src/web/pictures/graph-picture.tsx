import type { GraphLine } from "../../../shared/check.ts";
import { positionAt } from "../charts/curve.ts";
import { count } from "../plan/figures.ts";
import { DataTable } from "./data-table.tsx";
import { GraphMarks } from "./graph-marks.tsx";
import { Picture } from "./picture.tsx";
import { Plot } from "./plot.tsx";
import { useLooking } from "./stage.ts";

/** Room for a place, px; the whole graph stays between these heights. */
const PLACE_PX = 56;
const [LOWEST_PX, HIGHEST_PX] = [240, 560];
/** Under the plot: the room clock. */
export const ROOM_AXIS_PX = 22;

/** Trains on the line at `ms`, by code, once each. */
function trainsAt(line: GraphLine, ms: number): string[] {
  const here = line.trains.filter(({ points }) => positionAt(points, ms) !== null);
  return [...new Set(here.map(({ train }) => train))];
}

/** The train graph of one line: distance upright, time across, a line a train. */
export function GraphPicture({ line }: { readonly line: GraphLine }) {
  const { view } = useLooking();
  const trains = new Set(line.trains.map(({ train }) => train)).size;
  const heading =
    trains === 0
      ? `${line.name}: no train in this slot`
      : `${line.name}: ${count(trains, "train")} between ${line.stops[0]?.name} and ${line.stops.at(-1)?.name}`;
  const say = (ms: number) => {
    const here = trainsAt(line, ms);
    if (here.length === 0) return "no train on the line";
    return `${count(here.length, "train")} on the line: ${here.slice(0, 12).join(", ")}${here.length > 12 ? " …" : ""}`;
  };
  const height = Math.min(HIGHEST_PX, Math.max(LOWEST_PX, line.stops.length * PLACE_PX));
  const concerned = line.trains.some(({ train }) => view.emphasis.value.trains.has(train));
  return (
    <Picture
      id={`graph-${line.line}`}
      heading={heading}
      now={say}
      isConcerned={concerned}
      table={<GraphTable line={line} />}
    >
      <Plot label={heading} height={height + ROOM_AXIS_PX} say={say}>
        <GraphMarks line={line} height={height} />
      </Plot>
    </Picture>
  );
}

/** Every bend, with the place where it is at one. */
function GraphTable({ line }: { readonly line: GraphLine }) {
  const { view } = useLooking();
  const names = new Map(line.stops.map(({ atMm, name }) => [atMm, name]));
  return (
    <DataTable
      caption={`${line.name}: every bend of every train`}
      columns={[
        { head: "Train" },
        { head: "Layout time" },
        { head: "Room clock" },
        { head: "Place" },
        { head: "From the line's zero, m", isFigure: true },
      ]}
      rows={() =>
        line.trains.flatMap(({ train, points }) =>
          points.map(([ms, mm]) => [
            train,
            view.clocks.layoutText(ms),
            view.clocks.roomText(ms),
            names.get(mm) ?? "",
            (mm / 1_000).toFixed(2),
          ]),
        )
      }
    />
  );
}
