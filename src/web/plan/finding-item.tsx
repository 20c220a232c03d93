import type { FindingReport, Span } from "../../../shared/check.ts";
import type { Clocks } from "../charts/clocks.ts";
import { useLooking } from "../pictures/stage.ts";
import { SeverityMark } from "../shell/marks.tsx";
import { look, toEmphasis } from "./emphasis.ts";
import { allFeeds, concerns } from "./feeds.ts";
import { amps, duration, figureAgainstLimit } from "./figures.ts";
import type { KeyedFinding } from "./finding-key.ts";
import { lacks, needsOf } from "./needs.ts";

/** `19:41–19:46`, or one reading where the finding is an instant. */
function stretch({ startMs, endMs }: Span, text: (ms: number) => string): string {
  const [from, to] = [text(startMs), text(endMs)];
  return from === to ? from : `${from}–${to}`;
}

interface FindingItemProps {
  readonly keyed: KeyedFinding;
  readonly isChosen: boolean;
}

/** One finding: its sentence always, and once chosen the figures, both clocks, what would cure it, and where to look. */
export function FindingItem({ keyed, isChosen }: FindingItemProps) {
  const { view } = useLooking();
  const { finding, key } = keyed;
  const id = `finding-${key}`;
  const against = figureAgainstLimit(finding);
  return (
    <li class={`finding-item finding-${finding.severity} ${isChosen ? "finding-chosen" : ""}`}>
      <button
        type="button"
        class="finding"
        aria-expanded={isChosen}
        aria-controls={id}
        onClick={() => view.choose(isChosen ? null : key)}
      >
        <span class="finding-head">
          <SeverityMark severity={finding.severity} />
          <span class="finding-time">{view.clocks.layoutText(finding.atMs)}</span>
        </span>
        <span class="finding-sentence">{finding.sentence}</span>
        {against && <span class="finding-figure">{against}</span>}
      </button>
      <div id={id} class={isChosen ? "finding-more" : "finding-more finding-more-closed"}>
        <Facts finding={finding} clocks={view.clocks} />
        <p class="cure">
          <b>Cure</b> {finding.cure}
        </p>
        <WhereToLook finding={finding} />
      </div>
    </li>
  );
}

function Facts({ finding, clocks }: { readonly finding: FindingReport; readonly clocks: Clocks }) {
  const emphasis = toEmphasis({ key: "", finding });
  return (
    <dl class="facts">
      <div>
        <dt>Layout</dt>
        <dd>{stretch(finding.span, clocks.layoutText)}</dd>
      </div>
      <div>
        <dt>Room</dt>
        <dd>{stretch(finding.span, clocks.roomText)}</dd>
      </div>
      {finding.overSeconds !== null && finding.overSeconds > 0 && (
        <div>
          <dt>Over</dt>
          <dd>{duration(finding.overSeconds)} in all</dd>
        </div>
      )}
      {finding.trains.length > 0 && (
        <div>
          <dt>{finding.trains.length === 1 ? "Train" : "Trains"}</dt>
          <dd>
            {finding.trains.map((train) => (
              <span key={train} class={`train-code ${look(emphasis, train)}`}>
                {train}
                {shareOf(finding, train)}
              </span>
            ))}
          </dd>
        </div>
      )}
    </dl>
  );
}

function shareOf({ shares }: FindingReport, train: string): string {
  const share = shares.find((s) => s.train === train);
  return share ? ` ${amps(share.ma)}` : "";
}

/** Links to the pictures that tell most about a finding. */
function WhereToLook({ finding }: { readonly finding: FindingReport }) {
  const { view } = useLooking();
  const places: { href: string; text: string }[] = [];
  if (finding.trains.length > 0) places.push({ href: "trains", text: "Train graph" });
  if (finding.sections.length > 0) places.push({ href: "sections", text: "Sections" });
  for (const { id, title } of allFeeds(view.report).filter((feed) => concerns(finding, feed)))
    places.push({ href: id, text: title });
  for (const { id, title } of needsOf(view.report).filter((need) => lacks(finding, need)))
    places.push({ href: id, text: title });
  if (finding.unit === "outputs") places.push({ href: "assignments", text: "Who gets which output" });
  return (
    <p class="where">
      See{" "}
      {places.map(({ href, text }) => (
        <a key={href} href={`#${encodeURIComponent(href)}`}>
          {text}
        </a>
      ))}
    </p>
  );
}
