import { useEffect, useState } from "preact/hooks";
import { useLooking } from "../pictures/stage.ts";
import { valuesNow } from "./values-now.ts";

/** A screen reader is told once the moment has rested this long. */
const SETTLE_MS = 600;

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
            <dt title={name}>{name}</dt>
            <dd>{value}</dd>
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
  // the moment is what the text is made from
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
