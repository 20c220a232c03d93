import { useEffect, useState } from "preact/hooks";
import { valueAt } from "../charts/curve.ts";
import { useLooking } from "../pictures/stage.ts";
import { allFeeds, concerns, type Feed, strain } from "./feeds.ts";
import { amps } from "./figures.ts";
import { lacks, type Need, needsOf } from "./needs.ts";
import type { PlanView } from "./plan-view.ts";

/** Values read out beside the clocks; more would not be heard to the end. */
const [MOST_FEEDS, MOST_NEEDS] = [3, 2];
/** A screen reader is told once the moment has rested this long. */
const SETTLE_MS = 600;

interface ValueNow {
  readonly name: string;
  readonly value: string;
  readonly isOver: boolean;
}

/** What the chosen finding is about first, then the feeds with least headroom, then the needs. */
function valuesNow(view: PlanView): ValueNow[] {
  const { report } = view;
  const moment = view.moment.value;
  const finding = view.chosen.value?.finding;
  const isAsked = (feed: Feed) => Number(finding !== undefined && concerns(finding, feed));
  const feeds = allFeeds(report)
    .sort((a, b) => isAsked(b) - isAsked(a) || strain(b) - strain(a))
    .slice(0, MOST_FEEDS)
    .map(({ title, load }) => {
      const ma = valueAt(load.curve, moment);
      return { name: title, value: `${amps(ma)} of ${amps(load.limitMa)}`, isOver: ma > load.limitMa };
    });
  const isLacking = (need: Need) => Number(finding !== undefined && lacks(finding, need));
  const needs = needsOf(report)
    .sort((a, b) => isLacking(b) - isLacking(a))
    .slice(0, MOST_NEEDS)
    .map(({ title, report: { stock, curve } }) => {
      const n = valueAt(curve, moment);
      return { name: title, value: `${n} of ${stock}`, isOver: n > stock };
    });
  return [...feeds, ...needs];
}

/** The one moment, on both clocks, with what holds then and how closely the pictures look. */
export function MomentBar() {
  const { view } = useLooking();
  const moment = view.moment.value;
  const values = valuesNow(view);
  return (
    <section class="moment-bar" aria-label="The moment shown in every picture">
      <p class="clocks">
        <span class="clock-layout">{view.clocks.layoutText(moment)}</span>
        <span class="clock-room">
          {view.report.slot.startsAt === null ? "from the start" : "in the room"}{" "}
          {view.clocks.roomText(moment)}
        </span>
      </p>
      <dl class="values-now">
        {values.map(({ name, value, isOver }) => (
          <div key={name} class={isOver ? "value-over" : undefined}>
            <dt>{name}</dt>
            <dd>
              {value}
              {isOver && <span class="over-word"> over</span>}
            </dd>
          </div>
        ))}
      </dl>
      <Looks />
      <Readout />
    </section>
  );
}

/** How closely the pictures look, and where. */
function Looks() {
  const { view } = useLooking();
  const isZoomed = view.isZoomed.value;
  return (
    <fieldset class="looks">
      <legend class="visually-hidden">Stretch of time shown</legend>
      <button type="button" onClick={() => view.pan(-0.5)} disabled={!isZoomed} aria-label="Earlier">
        <span aria-hidden="true">‹</span>
      </button>
      <button type="button" onClick={() => view.zoom(2)} disabled={!isZoomed} aria-label="Wider">
        <span aria-hidden="true">−</span>
      </button>
      <button type="button" onClick={() => view.zoom(0.5)} aria-label="Closer">
        <span aria-hidden="true">+</span>
      </button>
      <button type="button" onClick={() => view.pan(0.5)} disabled={!isZoomed} aria-label="Later">
        <span aria-hidden="true">›</span>
      </button>
      <button type="button" class="whole" onClick={() => view.showWhole()} disabled={!isZoomed}>
        Whole slot
      </button>
    </fieldset>
  );
}

/** The same for screen readers, said once the moment rests. */
function Readout() {
  const { view } = useLooking();
  const moment = view.moment.value;
  const [text, setText] = useState("");
  // biome-ignore lint/correctness/useExhaustiveDependencies: the moment is what the text is made from
  useEffect(() => {
    const timer = setTimeout(() => {
      const values = valuesNow(view).map(({ name, value }) => `${name} ${value}`);
      const { layoutText, roomText } = view.clocks;
      setText(`${layoutText(moment)} on the layout, ${roomText(moment)} in the room. ${values.join("; ")}.`);
    }, SETTLE_MS);
    return () => clearTimeout(timer);
  }, [moment, view]);
  return (
    <p class="visually-hidden" aria-live="polite" data-readout>
      {text}
    </p>
  );
}
