import type { Booking, SlotBlock } from "../../../shared/booking.ts";
import { planAddress } from "../addresses.ts";
import { VerdictMark } from "../shell/marks.tsx";
import { useDesk } from "./desk.ts";
import { Moves } from "./moves.tsx";

/** The night in a sentence: of a draft, whether it runs; later, how it is manned. */
export function DeskAnswer() {
  const { booking } = useDesk();
  return (
    <section class="answer" aria-label="The answer">
      {booking.blocks ? <DraftAnswer blocks={booking.blocks} /> : <MannedAnswer booking={booking} />}
      {booking.reason !== null && (
        <p class="kept-reason">
          {booking.state === "cancelled" ? "Cancelled because: " : "Opened although something stops it: "}
          {booking.reason}
        </p>
      )}
      <Moves />
    </section>
  );
}

function DraftAnswer({ blocks }: { readonly blocks: readonly SlotBlock[] }) {
  const stops = blocks.reduce((sum, block) => sum + block.stops.length + block.unfit.length, 0);
  const headline =
    stops === 0
      ? "This night runs."
      : `${stops === 1 ? "One thing stops" : `${stops} things stop`} this night.`;
  return (
    <>
      <p class="headline">
        <VerdictMark verdict={stops === 0 ? "runs" : "stopped"} size={30} /> <span>{headline}</span>
      </p>
      {blocks.map((block) => (
        <Block key={block.slot} block={block} />
      ))}
    </>
  );
}

/** As many as one reads; the plan has them all. */
const SHOWN = 5;

function Block({ block: { slot, stops, unfit } }: { readonly block: SlotBlock }) {
  const { address, booking } = useDesk();
  const name = booking.slots.find((s) => s.slot === slot)?.name ?? slot;
  if (stops.length + unfit.length === 0) return null;
  return (
    <div class="block">
      <h2>{name}</h2>
      <ul>
        {unfit.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
        {stops.slice(0, SHOWN).map(({ sentence, cure }) => (
          <li key={sentence}>
            <p>{sentence}</p>
            <p class="quiet">{cure}</p>
          </li>
        ))}
      </ul>
      <p>
        <a href={planAddress(address.club, address.session, slot)}>
          {stops.length > SHOWN ? `All ${stops.length} in the plan` : "See it in the plan"}
        </a>
      </p>
    </div>
  );
}

function MannedAnswer({ booking: { manning, state } }: { readonly booking: Booking }) {
  const missing = manning.trains - manning.manned;
  const duties = manning.duties - manning.mannedDuties;
  const verb = state === "finished" ? "had" : "has";
  const text =
    missing === 0
      ? `Every train ${verb} a driver.`
      : `${missing} of ${manning.trains} trains ${missing === 1 ? verb : verb === "has" ? "have" : "had"} no driver${state === "finished" ? "" : " yet"}.`;
  return (
    <p class="headline">
      <span>
        {text}
        {duties > 0 && ` ${duties} ${duties === 1 ? "duty has" : "duties have"} nobody.`}
      </span>
    </p>
  );
}
