import { useId, useMemo } from "preact/hooks";
import { rectangle, type Scale } from "../charts/paths.ts";
import type { TimeWindow } from "../charts/ticks.ts";
import { look } from "../plan/emphasis.ts";
import { TimeGrid } from "./axes.tsx";
import type { OccupationBar, OccupationRow, OccupationTable } from "./occupation-rows.ts";
import { useLooking } from "./stage.ts";

export const ROW_PX = 20;
/** Free between two rows' bars, px. */
const GAP_PX = 4;
/** A number fits a bar of this width a letter, plus its margins; px. */
const [LETTER_PX, LETTER_MARGIN_PX] = [6.6, 6];
/** More numbers than this nobody reads, and they cost an element each. */
const MOST_NUMBERS = 600;

interface DrawnBar {
  readonly bar: OccupationBar;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The bars of the window in pixels. */
function drawBars(rows: readonly OccupationRow[], { fromMs, toMs }: TimeWindow, x: Scale): DrawnBar[] {
  return rows.flatMap(({ bars, place }) =>
    bars
      .filter((bar) => bar.blockedFromMs < toMs && bar.blockedToMs > fromMs)
      .map((bar) => {
        const height = (ROW_PX - GAP_PX) / bar.of;
        const left = x(Math.max(fromMs, bar.blockedFromMs));
        const width = x(Math.min(toMs, bar.blockedToMs)) - left;
        return { bar, left, width, height, top: place * ROW_PX + GAP_PX / 2 + bar.lane * height };
      }),
  );
}

const shape = ({ left, top, width, height }: DrawnBar) => rectangle(left, top, width, height - 0.6);

/** Marks of the occupation picture: equal bars make one path, those of the chosen finding stand out. */
export function OccupationMarks({ table }: { readonly table: OccupationTable }) {
  const { rows } = table;
  const { view, stage } = useLooking();
  const x = stage.x.value;
  const window = view.window.value;
  const emphasis = view.emphasis.value;
  const drawn = useMemo(() => drawBars(rows, window, x), [rows, window, x]);
  const every = useMemo(() => drawn.map(shape).join(""), [drawn]);
  const chosen = drawn.filter(({ bar }) => emphasis.trains.has(bar.train));
  return (
    <>
      <Headings table={table} />
      <RowNames rows={rows} />
      <TimeGrid height={table.places * ROW_PX} />
      <path class={emphasis.trains.size > 0 ? "bars bars-faded" : "bars"} d={every} />
      {chosen.map((one) => (
        <path
          key={`${one.bar.section} ${one.bar.train} ${one.bar.pathEntry}`}
          class={`bars bars-chosen ${look(emphasis, one.bar.train)}`}
          d={shape(one)}
        />
      ))}
      <Clashes rows={rows} x={x} window={window} />
      <Numbers drawn={drawn} />
    </>
  );
}

/** Names of the lines over their sections. */
function Headings({ table }: { readonly table: OccupationTable }) {
  const { stage } = useLooking();
  return (
    <g class="row-headings">
      {table.headings.map(({ name, place }) => (
        <g key={name}>
          <path class="place" d={`M0,${(place + 1) * ROW_PX - 1}H${stage.right.value}`} />
          <text x="0" y={place * ROW_PX + 15}>
            {name}
          </text>
        </g>
      ))}
    </g>
  );
}

function RowNames({ rows }: { readonly rows: readonly OccupationRow[] }) {
  const { view, stage } = useLooking();
  const sections = view.emphasis.value.sections;
  const left = stage.left.value;
  const most = Math.floor((left - 8) / 7);
  return (
    <g class="row-names">
      {rows.map(({ section, place }) => {
        const isChosen = sections.has(section.code);
        return (
          <g key={section.code}>
            {isChosen && (
              <rect class="row-chosen" x="0" y={place * ROW_PX} width={stage.width.value} height={ROW_PX} />
            )}
            <text
              class={isChosen ? "row-name row-name-chosen" : "row-name"}
              x={left - 8}
              y={place * ROW_PX + 14}
              text-anchor="end"
            >
              {section.code.length <= most ? section.code : `${section.code.slice(0, most - 1)}…`}
              <title>{`${section.name} (${section.control})`}</title>
            </text>
          </g>
        );
      })}
    </g>
  );
}

interface ClashesProps {
  readonly rows: readonly OccupationRow[];
  readonly x: Scale;
  readonly window: TimeWindow;
}

/** Hatching over the time that trains are in each other's way. */
function Clashes({ rows, x, window }: ClashesProps) {
  const hatch = useId();
  const d = rows
    .flatMap(({ clashes, place }) =>
      clashes
        .filter((part) => part.fromMs < window.toMs && part.toMs > window.fromMs)
        .map((part) => {
          const left = x(Math.max(window.fromMs, part.fromMs));
          const width = Math.max(3, x(Math.min(window.toMs, part.toMs)) - left);
          return rectangle(left, place * ROW_PX + 1, width, ROW_PX - 2);
        }),
    )
    .join("");
  if (d === "") return null;
  return (
    <>
      <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path class="hatch-line" d="M0 2.5H5" />
      </pattern>
      <path class="clash" d={d} fill={`url(#${hatch})`} />
    </>
  );
}

function Numbers({ drawn }: { readonly drawn: readonly DrawnBar[] }) {
  const { view } = useLooking();
  const emphasis = view.emphasis.value;
  const fitting = drawn.filter(
    ({ bar, width, height }) => height > 10 && width >= bar.train.length * LETTER_PX + LETTER_MARGIN_PX,
  );
  return (
    <g class="bar-numbers">
      {fitting.slice(0, MOST_NUMBERS).map(({ bar, left, top, width, height }) => (
        <text
          key={`${bar.section} ${bar.train} ${bar.pathEntry}`}
          class={look(emphasis, bar.train)}
          x={left + width / 2}
          y={top + height / 2 + 3.6}
          text-anchor="middle"
        >
          {bar.train}
        </text>
      ))}
    </g>
  );
}
