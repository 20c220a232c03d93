import { useEffect, useState } from "preact/hooks";
import { useLocation } from "preact-iso";
import type { OneTimeLink } from "../../../shared/accounts.ts";
import { nightsAddress } from "../addresses.ts";
import { redeemLink, signIn } from "../api/accounts.ts";
import { askMe, meState } from "../api/me.ts";
import { NewPasswordField } from "../shell/new-password-field.tsx";
import { Refused } from "../shell/refused.tsx";
import { TextField } from "../shell/text-field.tsx";
import { useSubmit } from "../shell/use-submit.ts";
import { afterLink } from "./after-link.ts";

interface InvitationFormProps {
  readonly link: OneTimeLink;
  readonly token: string;
}

/** Into a club, with a new account, or with the one that one has: then it only takes its password. */
export function InvitationForm(props: InvitationFormProps) {
  return props.link.hasAccount ? <JoinWithAccount {...props} /> : <JoinAnew {...props} />;
}

const homeOf = ({ club }: OneTimeLink) => (club ? nightsAddress(club.code) : "/");

function JoinAnew({ link, token }: InvitationFormProps) {
  const { route } = useLocation();
  const [name, setName] = useState(link.name ?? "");
  const [password, setPassword] = useState("");
  const { isBusy, problem, faultAt, submit } = useSubmit(async () => {
    await redeemLink(token, { name, password });
    route(await afterLink(homeOf(link)), true);
  });
  return (
    <form class="form" onSubmit={submit}>
      <p>
        You will sign in as <strong>{link.email}</strong>.
      </p>
      <TextField
        label="Your name"
        autocomplete="name"
        value={name}
        onValue={setName}
        fault={faultAt("/body/name")}
      />
      <NewPasswordField value={password} onValue={setPassword} fault={faultAt("/body/password")} />
      <Refused problem={problem} besides={["/body/name", "/body/password"]} />
      <div class="form-end">
        <button type="submit" class="primary" disabled={isBusy}>
          {isBusy ? "Joining …" : "Join the club"}
        </button>
      </div>
    </form>
  );
}

function JoinWithAccount({ link, token }: InvitationFormProps) {
  const { route } = useLocation();
  const [password, setPassword] = useState("");
  useEffect(() => void askMe(), []);
  const state = meState();
  const isSignedIn = state.status === "known" && state.me.person.email === link.email;
  const { isBusy, problem, faultAt, submit } = useSubmit(async () => {
    if (!isSignedIn && link.email) await signIn(link.email, password);
    await redeemLink(token, {});
    route(await afterLink(homeOf(link)), true);
  });
  return (
    <form class="form" onSubmit={submit}>
      <p>
        You have an account as <strong>{link.email}</strong>; the club is added to it.
      </p>
      {!isSignedIn && (
        <TextField
          label="Password"
          type="password"
          autocomplete="current-password"
          value={password}
          onValue={setPassword}
          fault={faultAt("/body/password")}
        />
      )}
      <Refused problem={problem} besides={["/body/password"]} />
      <div class="form-end">
        <button type="submit" class="primary" disabled={isBusy}>
          {isBusy ? "Joining …" : "Join the club"}
        </button>
      </div>
    </form>
  );
}
