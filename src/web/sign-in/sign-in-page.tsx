import { useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import { backAddress, FORGOT_PASSWORD } from "../addresses.ts";
import { signIn } from "../api/accounts.ts";
import { askMeAgain, forgetMe } from "../api/me.ts";
import { Refused } from "../shell/refused.tsx";
import { TextField } from "../shell/text-field.tsx";
import { useSubmit } from "../shell/use-submit.ts";
import { DemoSignIns } from "./demo-sign-ins.tsx";
import { Entrance } from "./entrance.tsx";

const FIELDS = ["/body/email", "/body/password"];

/** Says who one is, and goes back to where one was on the way to. */
export function SignInPage() {
  const { query, route } = useLocation();
  const [email, setEmail] = useState(query.email ?? "");
  const [password, setPassword] = useState("");
  const enter = async (as: { email: string; password: string }) => {
    await signIn(as.email, as.password);
    forgetMe();
    await askMeAgain();
    route(backAddress(query.to), true);
  };
  const { isBusy, problem, faultAt, submit } = useSubmit(() => enter({ email, password }));
  return (
    <Entrance title="Sign in" heading="Sign in">
      <form class="form" onSubmit={submit}>
        <TextField
          label="E-mail address"
          type="email"
          autocomplete="username"
          value={email}
          onValue={setEmail}
          fault={faultAt("/body/email")}
        />
        <TextField
          label="Password"
          type="password"
          autocomplete="current-password"
          value={password}
          onValue={setPassword}
          fault={faultAt("/body/password")}
        />
        <Refused problem={problem} besides={FIELDS} />
        <div class="form-end">
          <button type="submit" class="primary" disabled={isBusy}>
            {isBusy ? "Signing in …" : "Sign in"}
          </button>
          <a href={FORGOT_PASSWORD}>Forgot the password?</a>
        </div>
      </form>
      <p class="quiet">
        No account yet? The club's secretary makes one with an invitation, a link that works once.
      </p>
      <DemoSignIns enter={enter} />
    </Entrance>
  );
}
