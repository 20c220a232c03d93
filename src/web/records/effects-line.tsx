import type { EffectsAnswer } from "../../../shared/what-if.ts";
import { SeverityMark } from "../shell/marks.tsx";

/** Findings that are shown one by one. */
const MOST = 3;

/** What a change does to the nights to come, before it is made. */
export function EffectsLine({ told }: { readonly told: EffectsAnswer | null }) {
  return (
    <div role="status" class="effects">
      {told && told.slots.length > 0 && (
        <>
          <p>
            <strong>{told.headline}</strong>
          </p>
          <ul>
            {told.slots
              .filter(({ appears, hindrance, breaks }) => breaks || appears.length > 0 || hindrance !== null)
              .map(({ session, slot, name, slotName, appears, appearsLeftOut, hindrance }) => (
                <li key={`${session} ${slot}`}>
                  {name}, {slotName}:{" "}
                  {hindrance ?? (
                    <>
                      {appears.slice(0, MOST).map(({ code, severity, sentence }) => (
                        <span key={`${code} ${sentence}`} class="effect">
                          <SeverityMark severity={severity} /> {sentence}{" "}
                        </span>
                      ))}
                      {appears.length + appearsLeftOut > MOST &&
                        `and ${appears.length + appearsLeftOut - MOST} more`}
                    </>
                  )}
                </li>
              ))}
          </ul>
          {told.slotsLeftOut > 0 && (
            <p class="quiet">
              {told.slotsLeftOut === 1 ? "One slot" : `${told.slotsLeftOut} slots`} farther ahead{" "}
              {told.slotsLeftOut === 1 ? "was" : "were"} not looked at.
            </p>
          )}
        </>
      )}
    </div>
  );
}
