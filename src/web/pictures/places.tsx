import type { GraphLine } from "../../../shared/check.ts";
import type { Scale } from "../charts/paths.ts";
import type { Box } from "../charts/train-labels.ts";
import { useLooking } from "./stage.ts";

/** Closer than this, a place's name would cover the one before; px. */
const NAME_PX = 13;
/** On a narrow stage names stand inside, from here on, over their rule; px. */
const [INSIDE_PX, OVER_PX] = [4, 4];
/** Average advance of a letter of a name, generous; px. */
const LETTER_PX = 6.6;
/** Letters that fit the gutter of a wide stage. */
const MOST_LETTERS = 17;

interface PlacesProps {
  readonly line: GraphLine;
  readonly y: Scale;
}

/** A rule across the graph at every place. */
export function PlaceRules({ line, y }: PlacesProps) {
  const { stage } = useLooking();
  const [left, right] = [stage.left.value, stage.right.value];
  return (
    <path
      class="place"
      d={line.stops.map(({ atMm }) => `M${left},${y(atMm).toFixed(1)}H${right}`).join("")}
    />
  );
}

/** The places whose names have room, from the line's zero on. */
function named({ line, y }: PlacesProps): GraphLine["stops"] {
  let last = Number.NEGATIVE_INFINITY;
  return line.stops.filter(({ atMm }) => {
    const isFree = Math.abs(y(atMm) - last) >= NAME_PX;
    if (isFree) last = y(atMm);
    return isFree;
  });
}

/** Where the names stand on a narrow stage, so that train numbers can keep out of their way. */
export function nameBoxes(line: GraphLine, y: Scale): Box[] {
  return named({ line, y }).map(({ name, atMm }) => ({
    left: INSIDE_PX,
    right: INSIDE_PX + name.length * LETTER_PX,
    top: y(atMm) - OVER_PX - NAME_PX,
    bottom: y(atMm) - OVER_PX + 2,
  }));
}

/** Names of the places: in the gutter, or inside over their rule where the stage is narrow. */
export function PlaceNames({ line, y }: PlacesProps) {
  const { stage } = useLooking();
  const left = stage.left.value;
  const isNarrow = stage.isNarrow.value;
  return (
    <g>
      {named({ line, y }).map(({ place, name, atMm }) =>
        isNarrow ? (
          <text key={place} class="place-name place-name-inside" x={INSIDE_PX} y={y(atMm) - OVER_PX}>
            {name}
          </text>
        ) : (
          <text key={place} class="place-name" x={left - 8} y={y(atMm) + 4} text-anchor="end">
            {shortened(name)}
            <title>{name}</title>
          </text>
        ),
      )}
    </g>
  );
}

function shortened(name: string): string {
  return name.length <= MOST_LETTERS ? name : `${name.slice(0, MOST_LETTERS - 1).trimEnd()}…`;
}
