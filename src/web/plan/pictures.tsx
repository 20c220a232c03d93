import { useEffect, useState } from "preact/hooks";
import { linesByTraffic } from "../charts/section-order.ts";
import { Assignments } from "../pictures/assignments.tsx";
import { BusySections } from "../pictures/busy-sections.tsx";
import { GraphPicture } from "../pictures/graph-picture.tsx";
import { HandsetTurns } from "../pictures/handset-turns.tsx";
import { HeadroomTable } from "../pictures/headroom-table.tsx";
import { LoadPicture } from "../pictures/load-picture.tsx";
import { NeedPicture } from "../pictures/need-picture.tsx";
import { OccupationPicture } from "../pictures/occupation-picture.tsx";
import { HOW_TO_MOVE } from "../pictures/plot.tsx";
import { useLooking } from "../pictures/stage.ts";
import { allFeeds, FEED_KINDS, FEED_WORDS, type FeedKind, feedsOf } from "./feeds.ts";
import { listed } from "./figures.ts";
import { needsOf } from "./needs.ts";

/** Feeds of a kind shown at once, the tightest; a large railway has hundreds. */
const FEEDS_AT_ONCE = 12;

/** Every picture of the plan, by subject. */
export function Pictures() {
  const { report } = useLooking().view;
  useEffect(goToFragment, []);
  const idle = allFeeds(report)
    .filter(({ load }) => load.peakMa === 0)
    .map(({ title }) => title);
  const hasAnalog = report.analog.runs.length > 0;
  return (
    <>
      <Trains />
      <section id="currents" aria-labelledby="currents-heading">
        <h2 id="currents-heading">Currents</h2>
        <HeadroomTable />
        {FEED_KINDS.map((kind) => (
          <Feeds key={kind} kind={kind} />
        ))}
        {idle.length > 0 && <p class="idle quiet">Feeding nothing in this slot: {listed(idle)}.</p>}
      </section>
      <section id="occupation" aria-labelledby="occupation-heading">
        <h2 id="occupation-heading">Sections</h2>
        <OccupationPicture />
        <BusySections />
      </section>
      <section id="needs" aria-labelledby="needs-heading">
        <h2 id="needs-heading">{hasAnalog ? "Handsets and outputs" : "Handsets"}</h2>
        {needsOf(report).map((need) => (
          <NeedPicture key={need.id} need={need} />
        ))}
        {report.handsets.map((need) => (
          <HandsetTurns key={need.code} need={need} />
        ))}
        {hasAnalog && <Assignments />}
      </section>
    </>
  );
}

function Trains() {
  const { graph } = useLooking().view.report;
  return (
    <section id="trains" aria-labelledby="trains-heading">
      <h2 id="trains-heading">Trains</h2>
      <p id={HOW_TO_MOVE} class="how-to-move">
        Press anywhere in a picture to see that moment in all of them. With the keyboard: arrow keys move it,
        + and − look closer and wider.
      </p>
      {linesByTraffic(graph).map((line) => (
        <GraphPicture key={line.line} line={line} />
      ))}
    </section>
  );
}

/** The pictures come after the page, so the browser itself could not go to the one an address names. */
function goToFragment(): void {
  // reads a stray % as it stands, where decodeURIComponent would throw
  const id = new URLSearchParams(`id=${location.hash.slice(1)}`).get("id");
  if (id) document.getElementById(id)?.scrollIntoView();
}

function Feeds({ kind }: { readonly kind: FeedKind }) {
  const { view } = useLooking();
  const [most, setMost] = useState(FEEDS_AT_ONCE);
  const feeds = feedsOf(kind, view.report).filter(({ load }) => load.peakMa > 0);
  return (
    <>
      {feeds.slice(0, most).map((feed) => (
        <LoadPicture key={feed.id} feed={feed} />
      ))}
      {feeds.length > most && (
        <button type="button" onClick={() => setMost(feeds.length)}>
          Show the other {feeds.length - most} {FEED_WORDS[kind].plural.toLowerCase()}
        </button>
      )}
    </>
  );
}
