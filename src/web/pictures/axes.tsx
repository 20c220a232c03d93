import { layoutTicks, roomTicks, type Tick } from "../charts/ticks.ts";
import { useLooking } from "./stage.ts";

/** A clock reading takes about this much of an axis, px. */
const READING_PX = 54;
/** The axis's name ends here on a narrow stage, with half a reading's width added; px. */
const NAME_END_PX = 62;

/** Readings of the layout clock along the upper edge. */
export function LayoutAxis() {
  const { view, stage } = useLooking();
  const x = stage.x.value;
  const most = (stage.right.value - stage.left.value) / READING_PX;
  const isClear = ({ at }: Tick) => x(at) >= NAME_END_PX;
  return (
    <g class="axis">
      <text class="axis-name" x="0" y="14">
        {stage.isNarrow.value ? "layout" : "layout time"}
      </text>
      {layoutTicks(view.window.value, view.clocks, most)
        .filter(isClear)
        .map(({ at, label }) => (
          <text key={at} x={x(at)} y="14" text-anchor="middle">
            {label}
          </text>
        ))}
    </g>
  );
}

/** Upright hair lines at the layout clock's readings. */
export function TimeGrid({ height }: { readonly height: number }) {
  const { view, stage } = useLooking();
  const x = stage.x.value;
  const most = (stage.right.value - stage.left.value) / READING_PX;
  const d = layoutTicks(view.window.value, view.clocks, most)
    .map(({ at }) => `M${x(at).toFixed(1)},0V${height}`)
    .join("");
  return <path class="grid" d={d} />;
}

/** Readings of the room clock, under a plot. */
export function RoomAxis({ top }: { readonly top: number }) {
  const { view, stage } = useLooking();
  const x = stage.x.value;
  const most = (stage.right.value - stage.left.value) / READING_PX;
  const isClear = ({ at }: Tick) => x(at) >= NAME_END_PX;
  return (
    <g class="axis axis-room">
      <text class="axis-name" x="0" y={top + 15}>
        {stage.isNarrow.value ? "room" : "room clock"}
      </text>
      {roomTicks(view.window.value, view.clocks, most)
        .filter(isClear)
        .map(({ at, label }) => (
          <text key={at} x={x(at)} y={top + 15} text-anchor="middle">
            {label}
          </text>
        ))}
    </g>
  );
}

interface ValueAxisProps {
  readonly ticks: readonly number[];
  readonly y: (value: number) => number;
  readonly text: (value: number) => string;
  /** Written over the axis: `A`, `handsets`. */
  readonly unit: string;
}

/** Values at the left edge with hair lines across the plot. */
export function ValueAxis({ ticks, y, text, unit }: ValueAxisProps) {
  const { stage } = useLooking();
  const left = stage.left.value;
  const d = ticks.map((tick) => `M${left},${y(tick).toFixed(1)}H${stage.right.value}`).join("");
  const top = ticks.at(-1);
  return (
    <g class="axis">
      <path class="grid" d={d} />
      {ticks.map((tick) => (
        <text key={tick} x={left - 6} y={y(tick) + 4} text-anchor="end">
          {text(tick)}
          {tick === top ? ` ${unit}` : ""}
        </text>
      ))}
    </g>
  );
}
