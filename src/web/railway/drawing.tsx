import { useEffect, useState } from "preact/hooks";
import type { Section } from "../../../shared/layout.ts";
import { type Drawing, type DrawnSection, layOut } from "./lay-out.ts";
import type { Railway } from "./railway-state.ts";

interface RailwayDrawingProps {
  readonly railway: Railway;
  readonly chosen: string | null;
  readonly onChosen: (code: string) => void;
}

/** The railway as a drawing that makes itself from the records. */
export function RailwayDrawing({ railway, chosen, onChosen }: RailwayDrawingProps) {
  const [drawing, setDrawing] = useState<Drawing | null>(null);
  useEffect(() => {
    let isWanted = true;
    // the library comes only to who looks at a drawing
    void import("@dagrejs/dagre").then((dagre) => {
      if (isWanted) setDrawing(layOut(dagre, railway));
    });
    return () => {
      isWanted = false;
    };
  }, [railway]);
  if (drawing === null) return <p class="quiet">Drawing …</p>;
  const records = new Map(railway.sections.map((section) => [section.code, section]));
  return (
    <figure class="railway-drawing">
      <figcaption>
        <h2>How {railway.sections.length} sections join</h2>
        <p class="quiet">
          Solid is digital, double is analog, broken can be either; an arrow is a link passed one way only;
          the letters under a section are its power district. Press one for its row.
        </p>
      </figcaption>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls has to be reachable by keyboard */}
      <section class="wide-frame" tabIndex={0} aria-label="Drawing of the railway">
        {/* biome-ignore lint/a11y/noSvgWithoutTitle: its sections are buttons with names of their own */}
        <svg width={drawing.width} height={drawing.height} viewBox={`0 0 ${drawing.width} ${drawing.height}`}>
          <defs>
            <marker
              id="one-way"
              viewBox="0 0 8 8"
              refX="7"
              refY="4"
              markerWidth="8"
              markerHeight="8"
              orient="auto"
            >
              <path d="M0,0L8,4L0,8z" class="drawn-arrow" />
            </marker>
          </defs>
          {drawing.places.map(({ code, name, x, y, width, height }) => (
            <g key={code} class="drawn-place">
              <rect x={x} y={y} width={width} height={height} rx="6" />
              <text x={x + 6} y={y - 4}>
                {name}
              </text>
            </g>
          ))}
          {drawing.links.map(({ code, points, oneWay }) => (
            <path
              key={code}
              class="drawn-link"
              marker-end={oneWay ? "url(#one-way)" : undefined}
              d={`M${points.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join("L")}`}
            />
          ))}
          {drawing.sections.map((drawn) => (
            <SectionMark
              key={drawn.code}
              drawn={drawn}
              record={records.get(drawn.code)}
              isChosen={drawn.code === chosen}
              onChosen={onChosen}
            />
          ))}
        </svg>
      </section>
    </figure>
  );
}

interface SectionMarkProps {
  readonly drawn: DrawnSection;
  readonly record: Section | undefined;
  readonly isChosen: boolean;
  readonly onChosen: (code: string) => void;
}

function SectionMark({ drawn: { code, x, y, width }, record, isChosen, onChosen }: SectionMarkProps) {
  if (!record) return null;
  const { wiring, lengthMm, district, name } = record;
  const choose = () => onChosen(code);
  return (
    // biome-ignore lint/a11y/useSemanticElements: SVG has no button
    <g
      role="button"
      // as SVG writes it
      tabindex={0}
      aria-pressed={isChosen}
      aria-label={`${code}, ${name}, ${wiring}, ${lengthMm} mm${district ? `, district ${district}` : ""}`}
      class={`drawn-section drawn-${wiring}${isChosen ? " drawn-chosen" : ""}`}
      onClick={choose}
      onKeyDown={(event) => {
        if (event.key !== "Enter" && event.key !== " ") return;
        event.preventDefault();
        choose();
      }}
    >
      <rect class="drawn-target" x={x} y={y - 15} width={width} height="30" rx="4" />
      <path class="drawn-track" d={`M${x},${y}h${width}`} />
      {wiring === "analog" && <path class="drawn-track-gap" d={`M${x},${y}h${width}`} />}
      <text x={x + width / 2} y={y - 6} text-anchor="middle">
        {code}
      </text>
      {district && (
        <text class="drawn-district" x={x + width / 2} y={y + 13} text-anchor="middle">
          {district}
        </text>
      )}
    </g>
  );
}
