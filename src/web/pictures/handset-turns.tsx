import type { CheckReport } from "../../../shared/check.ts";
import { look } from "../plan/emphasis.ts";
import { count } from "../plan/figures.ts";
import { useLooking } from "./stage.ts";

type Need = CheckReport["handsets"][number];
type Turn = Need["sharing"]["turns"][number];

function statement({ name, sharing: { status, turns } }: Need): string {
  switch (status) {
    case "shared":
      return `${name}: every one of the ${count(turns.length, "train")} can have a handset that is in reach and charged`;
    case "impossible":
      return `${name}: no way of sharing out the handsets serves every train`;
    case "not-decided":
      return `${name}: whether the handsets can be shared out could not be settled`;
    case "not-listed":
      return `${name}: its handsets are known by number alone`;
  }
}

/** Which train has or may have which handset, in order of time; nothing where only their number is known. */
export function HandsetTurns({ need }: { readonly need: Need }) {
  const { sharing } = need;
  const heading = statement(need);
  if (sharing.status === "not-listed" || (sharing.status === "shared" && sharing.turns.length === 0))
    return null;
  const ordered = [...sharing.turns].sort(
    (a, b) => a.span.startMs - b.span.startMs || (a.train < b.train ? -1 : 1),
  );
  return (
    <figure id={`turns-${need.code}`} class="picture">
      <figcaption>
        <h3>{heading}</h3>
      </figcaption>
      {ordered.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls has to be reachable by keyboard
        <section class="table-frame" tabIndex={0} aria-label={heading}>
          <table class="assignments">
            <thead>
              <tr>
                <th scope="col">Train</th>
                <th scope="col">Handset</th>
                <th scope="col">Layout time</th>
                <th scope="col">Room clock</th>
              </tr>
            </thead>
            <tbody>
              {ordered.map((turn) => (
                <TurnRow key={`${turn.train} ${turn.span.startMs}`} turn={turn} />
              ))}
            </tbody>
          </table>
        </section>
      )}
      {ordered.some(({ isClaimed }) => isClaimed) && (
        <p class="picture-note">What is claimed stays; the others are one way of going round it.</p>
      )}
    </figure>
  );
}

function TurnRow({ turn: { train, handset, span, isClaimed } }: { readonly turn: Turn }) {
  const { view } = useLooking();
  const { clocks } = view;
  const moment = view.moment.value;
  const isNow = span.startMs <= moment && moment < span.endMs;
  const classes = [isNow && "row-now", view.emphasis.value.trains.has(train) && "row-concerned"];
  return (
    <tr class={classes.filter(Boolean).join(" ")} aria-current={isNow ? "time" : undefined}>
      <th scope="row">
        <span class={`train-code ${look(view.emphasis.value, train)}`}>{train}</span>
      </th>
      <td>
        {handset}
        {isClaimed && <span class="quiet"> claimed</span>}
      </td>
      <td>
        {clocks.layoutText(span.startMs)}–{clocks.layoutText(span.endMs)}
      </td>
      <td>
        {clocks.roomText(span.startMs)}–{clocks.roomText(span.endMs)}
      </td>
    </tr>
  );
}
