import type { ComponentChildren } from "preact";
import { useMemo } from "preact/hooks";
import { LayoutAxis } from "./axes.tsx";
import { FindingBand, MomentLine } from "./moment-line.tsx";
import { onPictureKey, pointerMoving } from "./moving.ts";
import { useLooking } from "./stage.ts";

/** Room for the layout clock's readings under or over a plot, px. */
export const AXIS_PX = 22;

/** Id of the words that say how to move the moment; the page shows them once. */
export const HOW_TO_MOVE = "how-to-move";

interface PlotProps {
  /** What the picture shows, for those who do not see it. */
  readonly label: string;
  /** Of the plot alone, px; the time axis comes on top. */
  readonly height: number;
  /** What holds at a moment, in words. */
  readonly say: (ms: number) => string;
  /** Marks in plot coordinates: 0 is the plot's upper edge. */
  readonly children: ComponentChildren;
  /** A tall plot scrolls inside its own frame, its time axis staying in sight. */
  readonly scrolls?: boolean;
}

/** The body of a picture: its marks over the shared time axis, the moment across it, keys and pointer to move it. */
export function Plot({ label, height, say, children, scrolls = false }: PlotProps) {
  const { view, stage } = useLooking();
  const pointer = useMemo(() => pointerMoving(view, stage), [view, stage]);
  const { fromMs, toMs } = view.window.value;
  const width = stage.width.value;
  const moment = view.moment.value;
  return (
    <div
      class={scrolls ? "plot plot-scrolls" : "plot"}
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-describedby={HOW_TO_MOVE}
      aria-valuemin={fromMs}
      aria-valuemax={toMs}
      aria-valuenow={moment}
      aria-valuetext={`${view.clocks.layoutText(moment)}: ${say(moment)}`}
      onKeyDown={(event) => onPictureKey(view, event)}
      {...pointer}
    >
      <svg class="plot-axis" width={width} height={AXIS_PX} aria-hidden="true">
        <LayoutAxis />
      </svg>
      <svg class="plot-marks" width={width} height={height} aria-hidden="true">
        <FindingBand height={height} />
        {children}
        <MomentLine height={height} />
      </svg>
    </div>
  );
}
