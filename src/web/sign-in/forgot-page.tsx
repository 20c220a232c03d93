import { useState } from "preact/hooks";
import { signInAddress } from "../addresses.ts";
import { requestReset } from "../api/accounts.ts";
import { Refused } from "../shell/refused.tsx";
import { TextField } from "../shell/text-field.tsx";
import { useSubmit } from "../shell/use-submit.ts";
import { Entrance } from "./entrance.tsx";

/** Asks for a link to choose a new password with. */
export function ForgotPage() {
  const [email, setEmail] = useState("");
  const [sentTo, setSentTo] = useState<string | null>(null);
  const { isBusy, problem, faultAt, submit } = useSubmit(async () => {
    await requestReset(email);
    setSentTo(email);
  });
  if (sentTo !== null) return <Sent email={sentTo} />;
  return (
    <Entrance
      title="Forgot the password"
      heading="Choose a new password"
      intro="A link comes by mail. It works once and for a short time, and your old password holds until it is used."
    >
      <form class="form" onSubmit={submit}>
        <TextField
          label="E-mail address"
          type="email"
          autocomplete="username"
          value={email}
          onValue={setEmail}
          fault={faultAt("/body/email")}
        />
        <Refused problem={problem} besides={["/body/email"]} />
        <div class="form-end">
          <button type="submit" class="primary" disabled={isBusy}>
            {isBusy ? "Asking …" : "Send me a link"}
          </button>
          <a href={signInAddress("/")}>Back to sign in</a>
        </div>
      </form>
    </Entrance>
  );
}

function Sent({ email }: { readonly email: string }) {
  return (
    <Entrance title="Look into your mail" heading="Look into your mail">
      <div class="said-so" role="status">
        <p>
          If <strong>{email}</strong> has an account here, a link is on its way to it.
        </p>
        <p>
          None after a few minutes? Look among the unwanted mail, or ask your club's secretary: where the
          service sends no mail, the secretary can hand you a link.
        </p>
      </div>
      <p>
        <a href={signInAddress("/")}>Back to sign in</a>
      </p>
    </Entrance>
  );
}
