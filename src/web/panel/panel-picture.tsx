import type { SelectorSchedule } from "../../../shared/selector-schedule.ts";
import type { Clocks } from "../charts/clocks.ts";
import { layoutTicks } from "../charts/ticks.ts";
import { DataTable } from "../pictures/data-table.tsx";
import { count } from "../plan/figures.ts";
import { mostOn } from "./turn-words.ts";

/** The drawing's own units; it is drawn as wide as the page. */
const WIDTH = 1_000;
const LEFT = 74;
const ROW = 24;
const GAP = 4;
const AXIS = 24;
/** Half of a reading of the clock. */
const HALF_READING = 20;
/** A code of one letter takes about this much of a band, with its margins. */
const [LETTER, MARGIN] = [9, 6];
/** Ways of filling a band; output after output takes the next. */
const FILLS = 4;

interface PanelPictureProps {
  readonly schedule: SelectorSchedule;
  readonly clocks: Clocks;
}

/** Which selector stands at which output when: a row a section, a band a position, its output written in it. */
export function PanelPicture({ schedule, clocks }: PanelPictureProps) {
  const { most, atMs } = mostOn(schedule);
  const heading = `At most ${count(most, "selector is", "selectors are")} on at one time, first at ${clocks.layoutText(atMs)}`;
  const used = new Set(schedule.sections.flatMap(({ bands }) => bands.map(({ output }) => output)));
  const outputs = schedule.outputs.filter(({ code }) => used.has(code));
  return (
    <section aria-labelledby="panel-picture">
      <h2 id="panel-picture">{heading}</h2>
      <figure class="picture panel-picture">
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls has to be reachable by keyboard */}
        <section class="panel-frame" tabIndex={0} aria-label="Bands of the selectors over layout time">
          <Drawing
            schedule={schedule}
            clocks={clocks}
            codes={outputs.map(({ code }) => code)}
            heading={heading}
          />
        </section>
        <ul class="panel-legend">
          {outputs.map(({ code, name }, at) => (
            <li key={code}>
              <svg width="30" height="16" aria-hidden="true">
                <rect class={fillClass(at)} x="0.5" y="0.5" width="29" height="15" />
              </svg>{" "}
              <b>{code}</b> {name}
            </li>
          ))}
        </ul>
        <DataTable
          caption="Positions of the selectors"
          columns={[{ head: "Section" }, { head: "Output" }, { head: "From" }, { head: "To" }]}
          rows={() =>
            schedule.sections.flatMap(({ code, bands }) =>
              bands.map(({ output, from, to }) => [code, output, from, to]),
            )
          }
        />
      </figure>
    </section>
  );
}

const fillClass = (at: number) => `panel-band panel-band-${(at % FILLS) + 1}`;

interface DrawingProps extends PanelPictureProps {
  /** Of the outputs in use. */
  readonly codes: readonly string[];
  readonly heading: string;
}

function Drawing({ schedule, clocks, codes, heading }: DrawingProps) {
  const { sections, slot } = schedule;
  const bands = sections.flatMap((section, row) => section.bands.map((band) => ({ ...band, row })));
  const fromMs = Math.min(slot.startMs, ...bands.map((band) => band.fromMs));
  const toMs = Math.max(slot.endMs, ...bands.map((band) => band.toMs));
  const x = (ms: number) => LEFT + ((ms - fromMs) / (toMs - fromMs)) * (WIDTH - LEFT - 2);
  const height = AXIS + sections.length * ROW;
  const y = (row: number) => AXIS + row * ROW;
  return (
    <svg class="panel-drawing" viewBox={`0 0 ${WIDTH} ${height}`} role="img" aria-label={heading}>
      <Patterns />
      {layoutTicks({ fromMs, toMs }, clocks, 12).map(({ at, label }) => (
        <g key={at}>
          <path class="grid" d={`M${x(at)},${AXIS}V${height}`} />
          <text x={Math.min(x(at), WIDTH - HALF_READING)} y="15" text-anchor="middle">
            {label}
          </text>
        </g>
      ))}
      {sections.map(({ code }, row) => (
        <g key={code}>
          <path class="grid" d={`M0,${y(row)}H${WIDTH}`} />
          <text class="panel-name" x="0" y={y(row) + ROW - 7}>
            {code}
          </text>
        </g>
      ))}
      {bands.map(({ output, row, ...band }) => {
        const [left, right] = [x(band.fromMs), x(band.toMs)];
        return (
          <g key={`${row} ${band.fromMs}`}>
            <rect
              class={fillClass(codes.indexOf(output))}
              x={left}
              y={y(row) + GAP / 2}
              width={Math.max(1, right - left)}
              height={ROW - GAP}
            />
            {right - left > output.length * LETTER + MARGIN && (
              <text class="panel-letter" x={(left + right) / 2} y={y(row) + ROW - 7} text-anchor="middle">
                {output}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}

/** Fills that can be told apart in black and white. */
function Patterns() {
  return (
    <defs>
      <pattern
        id="panel-fill-2"
        width="7"
        height="7"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <path class="panel-stroke-2" d="M0,0V7" />
      </pattern>
      <pattern id="panel-fill-3" width="6" height="6" patternUnits="userSpaceOnUse">
        <circle class="panel-dot-3" cx="3" cy="3" r="1.3" />
      </pattern>
      <pattern id="panel-fill-4" width="6" height="6" patternUnits="userSpaceOnUse">
        <path class="panel-stroke-4" d="M0,3H6" />
      </pattern>
    </defs>
  );
}
