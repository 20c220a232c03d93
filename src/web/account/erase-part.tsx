import { useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import { signInAddress } from "../addresses.ts";
import { eraseMe } from "../api/account.ts";
import { forgetMe } from "../api/me.ts";
import { Refused } from "../shell/refused.tsx";
import { Section } from "../shell/section.tsx";
import { TextField } from "../shell/text-field.tsx";
import { useSubmit } from "../shell/use-submit.ts";

/** Ends the account for good. */
export function ErasePart() {
  const [isOpen, setOpen] = useState(false);
  return (
    <Section heading="Erase the account" about="Nobody can undo this.">
      <ul class="told">
        <li>Your name, e-mail address and password are erased; you can never sign in again.</li>
        <li>Give back first what you have in nights to come. Tokens and calendar stop working.</li>
        <li>The clubs keep what was done on which night, without saying that it was you.</li>
      </ul>
      {isOpen ? (
        <EraseForm onLeave={() => setOpen(false)} />
      ) : (
        <p>
          <button type="button" class="tall" onClick={() => setOpen(true)}>
            Erase my account …
          </button>
        </p>
      )}
    </Section>
  );
}

function EraseForm({ onLeave }: { readonly onLeave: () => void }) {
  const { route } = useLocation();
  const [password, setPassword] = useState("");
  const { isBusy, problem, faultAt, submit } = useSubmit(async () => {
    await eraseMe(password);
    route(signInAddress("/"), true);
    forgetMe();
  });
  return (
    <form class="form" onSubmit={submit}>
      <TextField
        label="Your password, to be sure that it is you"
        type="password"
        autocomplete="current-password"
        value={password}
        onValue={setPassword}
        fault={faultAt("/body/password")}
      />
      <Refused problem={problem} besides={["/body/password"]} />
      <div class="form-end">
        <button type="submit" class="grave" disabled={isBusy}>
          {isBusy ? "Erasing …" : "Erase it for good"}
        </button>
        <button type="button" onClick={onLeave}>
          Keep my account
        </button>
      </div>
    </form>
  );
}
