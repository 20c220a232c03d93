import type { Feed } from "../plan/feeds.ts";
import { amps, percent } from "../plan/figures.ts";

/** How much of a feed's peak is known, what a stalled locomotive would do, and whether a district comes up after a trip. */
export function Surges({ feed }: { readonly feed: Feed }) {
  const { stall, restart, limitMa, lowMa, highMa, measuredMa, assumedMa } = feed.load;
  const drawn = measuredMa + assumedMa;
  return (
    <div class="surges">
      {drawn > 0 && (
        <p>
          <b>How much of it is known</b>: {percent(measuredMa / drawn)} of the peak is measured, the rest
          assumed; it lies between {amps(lowMa)} and {amps(highMa)}.
        </p>
      )}
      {stall && (
        <p>
          <b>If one locomotive stalled</b> it would be worst at {stall.atLayout}, locomotive{" "}
          {stall.locomotive} of train {stall.train}: {amps(stall.ma)} of {amps(limitMa)},{" "}
          {stall.ma > limitMa ? <strong>which is too much.</strong> : "which it bears."}
        </p>
      )}
      {restart && (
        <p>
          <b>After a trip</b> it would be worst at {restart.atLayout}, when all that is in it draws{" "}
          {amps(restart.inrushMa)} for a moment:{" "}
          {restart.isWithin
            ? "the breaker holds in."
            : restart.holds
              ? "the surge is over before the breaker opens, so it holds in."
              : null}
          {!restart.holds && <strong>the breaker would open again.</strong>}
        </p>
      )}
      {restart && !restart.holds && <Groups restart={restart} />}
    </div>
  );
}

function Groups({
  restart: { groups, proven, tooBig },
}: {
  readonly restart: NonNullable<Feed["load"]["restart"]>;
}) {
  if (groups === null)
    return (
      <p>
        {tooBig.length > 0
          ? `Take ${tooBig.join(", ")} off before power returns: the breaker does not bear ${tooBig.length === 1 ? "it" : "them"} even alone.`
          : "There is no order in which the breaker bears it: take a train off before power returns."}
      </p>
    );
  return (
    <>
      <p>
        Bring it up in {groups.length} groups, the others off the track or switched off meanwhile
        {proven ? "; fewer would not do" : ""}:
      </p>
      <ol>
        {groups.map((group) => (
          <li key={group.join()}>{group.join(", ")}</li>
        ))}
      </ol>
    </>
  );
}
