import { useState } from "preact/hooks";
import type { Claim, EveningItem } from "../../../shared/claims.ts";
import { Field, fieldText } from "../nights/field.tsx";
import { titleOf, useCrew } from "./crew.ts";
import { offerSwap } from "./crew-service.ts";
import { roomTime } from "./times.ts";

interface SwapFormProps {
  readonly item: EveningItem;
  readonly close: () => void;
}

/** Offers something of one's own for something of somebody else's. */
export function SwapForm({ item, close }: SwapFormProps) {
  const { board, deeds, address } = useCrew();
  const [wanted, setWanted] = useState("");
  const [message, setMessage] = useState("");
  const choices = [...board.trains, ...board.duties]
    .filter(({ claim, mine }) => claim !== null && !mine)
    .map((row) => ({ row, claim: row.claim as Claim }));
  if (choices.length === 0) return <p>Nobody else has a train or a duty in this slot to swap for.</p>;
  const submit = async (event: Event) => {
    event.preventDefault();
    const choice = choices.find(({ claim }) => claim.id === wanted);
    if (!choice) return;
    const body = { gives: item.claim.id, wants: wanted, message };
    const isDone = await deeds.run({
      name: `swap ${JSON.stringify(body)}`,
      deed: (key) => offerSwap(address, body, key),
      tell: () => ({ text: `${choice.claim.name} is asked. Both keep what they have until then.` }),
    });
    if (isDone) close();
  };
  return (
    <form class="live-form" onSubmit={submit}>
      <Field label="For" class="grows">
        <select value={wanted} required onChange={(event) => setWanted(fieldText(event))}>
          <option value="">Choose</option>
          {choices.map(({ row, claim }) => (
            <option key={claim.id} value={claim.id}>
              {roomTime(row.from.at, board.timeZone)} {titleOf(claim.kind, row.code, row.name)}, {claim.name}
            </option>
          ))}
        </select>
      </Field>
      <Field label="A word with it" class="grows">
        <input value={message} maxLength={500} onInput={(event) => setMessage(fieldText(event))} />
      </Field>
      <button type="submit" class="big-button">
        Offer the swap
      </button>
    </form>
  );
}
