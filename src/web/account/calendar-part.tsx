import { useState } from "preact/hooks";
import { makeCalendarAddress, revokeCalendarAddress } from "../api/account.ts";
import { CopyLine } from "../shell/copy-line.tsx";
import { ForGood } from "../shell/for-good.tsx";
import { Refused } from "../shell/refused.tsx";
import { Section } from "../shell/section.tsx";
import { useSubmit } from "../shell/use-submit.ts";

/** The secret address under which a calendar program finds one's turns. */
export function CalendarPart() {
  const [address, setAddress] = useState<string | null>(null);
  const [isRevoked, setRevoked] = useState(false);
  const making = useSubmit(async () => {
    setAddress(await makeCalendarAddress());
    setRevoked(false);
  });
  const revoking = useSubmit(async () => {
    await revokeCalendarAddress();
    setAddress(null);
    setRevoked(true);
  });
  return (
    <Section
      heading="Calendar"
      about="Your calendar program can follow your turns by a secret address. Whoever has it can read them: give it to nobody."
    >
      {address && (
        <CopyLine
          label="Address of your calendar"
          value={address}
          hint="Subscribe to it in your calendar program. It is not shown again; a new one can be made at any time."
        />
      )}
      <div class="form-end">
        <button type="button" disabled={making.isBusy} onClick={() => void making.run()}>
          {making.isBusy ? "Making it …" : "Make a new address"}
        </button>
        <ForGood
          word="Revoke"
          what="the address in use"
          isBusy={revoking.isBusy}
          onSure={() => void revoking.run()}
        />
        <span role="status">{isRevoked && "Revoked: the old address leads nowhere now."}</span>
      </div>
      <p class="quiet">With a new address, the one before stops working.</p>
      <Refused problem={making.problem ?? revoking.problem} />
    </Section>
  );
}
