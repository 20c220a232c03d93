import type { ComponentChildren } from "preact";
import type { EveningItem } from "../../../shared/claims.ts";
import { titleOf } from "../crew/crew.ts";
import { roomTime, walkText } from "../crew/times.ts";
import { farOff } from "../live/reading.ts";
import { endText } from "../nights/end-text.ts";
import type { Due } from "./when.ts";

interface NextItemProps {
  readonly due: Due;
  readonly timeZone: string;
  /** Whether nothing moves because the layout clock stands. */
  readonly isPaused: boolean;
}

/** What one does next, large enough to read while walking. */
export function NextItem({ due, timeZone, isPaused }: NextItemProps) {
  const { item, tonight, minutes } = due;
  const { claim, from, to } = item;
  const isUnderWay = tonight?.state === "running" || (minutes < 0 && claim.kind === "duty");
  const title = titleOf(claim.kind, claim.code, item.name);
  return (
    <section class="next-item" aria-labelledby="next-heading">
      <h2 id="next-heading">
        {title} {claim.kind === "train" && <span>{item.name}</span>}
      </h2>
      <p class="next-when">
        {isUnderWay ? "Under way" : farOff(minutes)}
        {isPaused && <small> while the layout clock is paused</small>}
      </p>
      <dl class="next-facts">
        <Fact term="When">
          {roomTime(from.at, timeZone)}, layout {tonight?.from.expectedLayout ?? from.layout}
          {tonight && tonight.lateMinutes > 0 && <span class="late">{tonight.lateMinutes} min late</span>}
        </Fact>
        <Fact term={claim.kind === "train" ? "From" : "Where"}>{endText(from)}</Fact>
        {claim.kind === "train" && (
          <Fact term="To">
            {endText(to)}, layout {tonight?.to.expectedLayout ?? to.layout}
          </Fact>
        )}
        <Locomotives due={due} />
        <HandsetFact item={item} />
        <Handover item={item} />
      </dl>
      {claim.problems.map(({ code, sentence }) => (
        <p key={code} class="missing">
          {sentence}
        </p>
      ))}
    </section>
  );
}

function Fact({ term, children }: { readonly term: string; readonly children: ComponentChildren }) {
  return (
    <div>
      <dt>{term}</dt>
      <dd>{children}</dd>
    </div>
  );
}

/** As they are tonight: one that failed may have been replaced. */
function Locomotives({ due: { item, tonight } }: { readonly due: Due }) {
  const locomotives = tonight?.locomotives ?? item.locomotives.map((l) => ({ ...l, failed: false }));
  if (locomotives.length === 0) return null;
  return (
    <Fact term="Locomotive">
      {locomotives.map(({ code, address, failed }) => (
        <span key={code} class={failed ? "missing" : ""}>
          {code}
          {address && <b class="address"> address {address.number}</b>}
          {failed && " failed: ask the marshal"}{" "}
        </span>
      ))}
    </Fact>
  );
}

function HandsetFact({ item }: { readonly item: EveningItem }) {
  const { claim, control, handsetFrom, handsetTo, handset } = item;
  if (control === "controller") return <Fact term="Handset">none: driven from the panel</Fact>;
  if (claim.handset === null) return null;
  return (
    <Fact term="Handset">
      <b>{claim.handset}</b>
      {handset && `, ${handset.kind}`}, from {handsetFrom?.name ?? "the desk"}; then to{" "}
      {handsetTo?.name ?? "the desk"}
      {control === "both" && "; for the rest from the panel"}
    </Fact>
  );
}

/** Who brought the locomotive, and who has it after. */
function Handover({ item: { takesOverFrom, handsOverTo, walkSeconds } }: { readonly item: EveningItem }) {
  return (
    <>
      {takesOverFrom && (
        <Fact term="Take over">
          from train {takesOverFrom.train}, {takesOverFrom.driver?.name ?? "which has no driver yet"}
        </Fact>
      )}
      {handsOverTo && (
        <Fact term="Hand over">
          to train {handsOverTo.train}, {handsOverTo.driver?.name ?? "which has no driver yet"}
        </Fact>
      )}
      {walkSeconds !== null && walkSeconds > 0 && <Fact term="Walk">{walkText(walkSeconds)} to it</Fact>}
    </>
  );
}
