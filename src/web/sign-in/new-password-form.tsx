import { useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import type { OneTimeLink } from "../../../shared/accounts.ts";
import { redeemLink } from "../api/accounts.ts";
import { NewPasswordField } from "../shell/new-password-field.tsx";
import { Refused } from "../shell/refused.tsx";
import { useSubmit } from "../shell/use-submit.ts";
import { afterLink } from "./after-link.ts";

/** Another password in place of one that was forgotten. */
export function NewPasswordForm({ link, token }: { readonly link: OneTimeLink; readonly token: string }) {
  const { route } = useLocation();
  const [password, setPassword] = useState("");
  const { isBusy, problem, faultAt, submit } = useSubmit(async () => {
    await redeemLink(token, { password });
    route(await afterLink("/"), true);
  });
  return (
    <form class="form" onSubmit={submit}>
      {link.email && (
        <p>
          For <strong>{link.email}</strong>. Everywhere you are signed in now, you will be signed out.
        </p>
      )}
      <NewPasswordField
        label="New password"
        value={password}
        onValue={setPassword}
        fault={faultAt("/body/password")}
      />
      <Refused problem={problem} besides={["/body/password"]} />
      <div class="form-end">
        <button type="submit" class="primary" disabled={isBusy}>
          {isBusy ? "Saving …" : "Use this password"}
        </button>
      </div>
    </form>
  );
}
