import { concerns, FEED_KINDS, FEED_WORDS, type Feed, feedsOf, strain } from "../plan/feeds.ts";
import { amps, percent } from "../plan/figures.ts";
import { useLooking } from "./stage.ts";

/** Every working feed's peak against its limit, the least headroom first in each kind; a row leads to its picture. */
export function HeadroomTable() {
  const { view } = useLooking();
  const widest = Math.max(1.1, ...FEED_KINDS.flatMap((kind) => feedsOf(kind, view.report).map(strain)));
  return (
    <table class="headroom">
      <caption class="visually-hidden">Peak of every feed against its limit</caption>
      <thead>
        <tr>
          <th scope="col">Feed</th>
          <th scope="col">Peak against limit</th>
          <th scope="col" class="figure">
            Peak of limit
          </th>
          <th scope="col" class="figure wide-only">
            At
          </th>
          <th scope="col" class="figure">
            Free
          </th>
        </tr>
      </thead>
      {FEED_KINDS.map((kind) => (
        <tbody key={kind} aria-label={FEED_WORDS[kind].plural}>
          {feedsOf(kind, view.report)
            .filter(({ load }) => load.peakMa > 0)
            .map((feed) => (
              <HeadroomRow key={feed.id} feed={feed} widest={widest} />
            ))}
        </tbody>
      ))}
    </table>
  );
}

function HeadroomRow({ feed, widest }: { readonly feed: Feed; readonly widest: number }) {
  const { view } = useLooking();
  const { load, id, title } = feed;
  const finding = view.chosen.value?.finding;
  const isConcerned = finding !== undefined && concerns(finding, feed);
  const free = 1 - strain(feed);
  return (
    <tr class={isConcerned ? "row-concerned" : undefined}>
      <th scope="row">
        <a href={`#${encodeURIComponent(id)}`}>{title}</a>
      </th>
      <td class="headroom-bar">
        <StrainBar feed={feed} widest={widest} />
      </td>
      <td class="figure">
        {amps(load.peakMa)} <span class="quiet">of {amps(load.limitMa)}</span>
      </td>
      <td class="figure wide-only">{load.peakLayout}</td>
      <td class="figure">{free < 0 ? `−${percent(-free)}` : percent(free)}</td>
    </tr>
  );
}

/** The peak as a bar; the limit as a rule across it and the reserve as a broken one. */
function StrainBar({ feed, widest }: { readonly feed: Feed; readonly widest: number }) {
  const { load } = feed;
  const share = (ma: number) => (100 * ma) / (load.limitMa * widest);
  const within = Math.min(load.peakMa, load.limitMa);
  const over = Math.max(0, load.peakMa - load.limitMa);
  return (
    <svg viewBox="0 0 100 14" preserveAspectRatio="none" aria-hidden="true">
      <rect class="strain" x="0" y="3" width={share(within)} height="8" />
      {over > 0 && <rect class="strain-over" x={share(load.limitMa)} y="3" width={share(over)} height="8" />}
      <path class="rule rule-reserve" d={`M${share(load.reserveMa)},1V13`} />
      <path class="rule rule-limit" d={`M${share(load.limitMa)},0V14`} />
    </svg>
  );
}
