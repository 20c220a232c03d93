import { useState } from "preact/hooks";
import { changePassword } from "../api/account.ts";
import { useMe } from "../api/use-me.ts";
import { NewPasswordField } from "../shell/new-password-field.tsx";
import { Refused } from "../shell/refused.tsx";
import { Section } from "../shell/section.tsx";
import { TextField } from "../shell/text-field.tsx";
import { useSubmit } from "../shell/use-submit.ts";

const FIELDS = ["/body/current", "/body/password"];

/** Another password, for who knows the one in use. */
export function PasswordPart() {
  const { person } = useMe();
  const [current, setCurrent] = useState("");
  const [password, setPassword] = useState("");
  const [isSaved, setSaved] = useState(false);
  const { isBusy, problem, faultAt, submit } = useSubmit(async () => {
    setSaved(false);
    await changePassword(current, password);
    setCurrent("");
    setPassword("");
    setSaved(true);
  });
  return (
    <Section heading="Password" about="With a new one, you are signed out everywhere but here.">
      <form class="form" onSubmit={submit}>
        <input type="hidden" autocomplete="username" value={person.email} />
        <TextField
          label="Password now"
          type="password"
          autocomplete="current-password"
          value={current}
          onValue={setCurrent}
          fault={faultAt("/body/current")}
        />
        <NewPasswordField
          label="New password"
          value={password}
          onValue={setPassword}
          fault={faultAt("/body/password")}
        />
        <Refused problem={problem} besides={FIELDS} />
        <div class="form-end">
          <button type="submit" disabled={isBusy}>
            {isBusy ? "Saving …" : "Change the password"}
          </button>
          <span role="status">{isSaved && "Changed. Everywhere else you are signed out."}</span>
        </div>
      </form>
    </Section>
  );
}
