import { useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import { redeemLink } from "../api/accounts.ts";
import { NewPasswordField } from "../shell/new-password-field.tsx";
import { Refused } from "../shell/refused.tsx";
import { TextField } from "../shell/text-field.tsx";
import { useSubmit } from "../shell/use-submit.ts";
import { afterLink } from "./after-link.ts";

const FIELDS = ["/body/name", "/body/email", "/body/password"];

/** The account that everything on a new installation begins with. */
export function FirstSecretaryForm({ token }: { readonly token: string }) {
  const { route } = useLocation();
  const [name, setName] = useState("");
  const [email, setEmail] = useState("");
  const [password, setPassword] = useState("");
  const { isBusy, problem, faultAt, submit } = useSubmit(async () => {
    await redeemLink(token, { name, email, password });
    route(await afterLink("/"), true);
  });
  return (
    <form class="form" onSubmit={submit}>
      <p>Whoever makes it sets up the first club and is its secretary. It can be passed on later.</p>
      <TextField
        label="Your name"
        autocomplete="name"
        value={name}
        onValue={setName}
        fault={faultAt("/body/name")}
      />
      <TextField
        label="E-mail address"
        type="email"
        autocomplete="username"
        value={email}
        onValue={setEmail}
        fault={faultAt("/body/email")}
      />
      <NewPasswordField value={password} onValue={setPassword} fault={faultAt("/body/password")} />
      <Refused problem={problem} besides={FIELDS} />
      <div class="form-end">
        <button type="submit" class="primary" disabled={isBusy}>
          {isBusy ? "Making it …" : "Make the account"}
        </button>
      </div>
    </form>
  );
}
