import { useState } from "preact/hooks";
import type { TokenScope } from "../../../shared/accounts.ts";
import { makeToken } from "../api/account.ts";
import { useMe } from "../api/use-me.ts";
import { CopyLine } from "../shell/copy-line.tsx";
import { Refused } from "../shell/refused.tsx";
import { SelectField } from "../shell/select-field.tsx";
import { TextField } from "../shell/text-field.tsx";
import { useSubmit } from "../shell/use-submit.ts";

const DAY_MS = 86_400_000;
const LIVES = { "30": "30 days", "90": "90 days", "365": "a year" } as const;
const SCOPES = { read: "Reads only", write: "Reads and changes" } as const satisfies Record<
  TokenScope,
  string
>;
const ALL = "";

/** Makes a token and shows it, which happens once. */
export function NewToken({ onMade }: { readonly onMade: () => void }) {
  const [isOpen, setOpen] = useState(false);
  const [made, setMade] = useState<string | null>(null);
  if (made !== null)
    return (
      <div class="said-so">
        <CopyLine
          label="Your new token"
          value={made}
          hint="Keep it where the program finds it: it is not shown again."
        />
        <button type="button" onClick={() => setMade(null)}>
          I have it
        </button>
      </div>
    );
  if (!isOpen)
    return (
      <p>
        <button type="button" class="tall" onClick={() => setOpen(true)}>
          New token
        </button>
      </p>
    );
  return (
    <div class="inset">
      <h3>New token</h3>
      <TokenForm
        onMade={(token) => {
          setMade(token);
          setOpen(false);
          onMade();
        }}
        onLeave={() => setOpen(false)}
      />
    </div>
  );
}

interface TokenFormProps {
  readonly onMade: (token: string) => void;
  readonly onLeave: () => void;
}

function TokenForm({ onMade, onLeave }: TokenFormProps) {
  const { clubs } = useMe();
  const [name, setName] = useState("");
  const [scope, setScope] = useState<string>("read");
  const [club, setClub] = useState(ALL);
  const [days, setDays] = useState("90");
  const { isBusy, problem, faultAt, submit } = useSubmit(async () => {
    const expiresAt = new Date(Date.now() + Number(days) * DAY_MS).toISOString();
    onMade(
      await makeToken({ name, scope: scope as TokenScope, club: club === ALL ? null : club, expiresAt }),
    );
  });
  const places = Object.fromEntries([[ALL, "All my clubs"], ...clubs.map(({ code, name }) => [code, name])]);
  return (
    <form class="form" onSubmit={submit}>
      <TextField
        label="What it is for"
        hint="The program's name, so that you know it again."
        value={name}
        onValue={setName}
        fault={faultAt("/body/name")}
      />
      <SelectField label="What it may do" value={scope} onValue={setScope} options={SCOPES} />
      <SelectField label="Where" value={club} onValue={setClub} options={places} />
      <SelectField label="How long" value={days} onValue={setDays} options={LIVES} />
      <Refused problem={problem} besides={["/body/name"]} />
      <div class="form-end">
        <button type="submit" class="primary" disabled={isBusy}>
          {isBusy ? "Making it …" : "Make the token"}
        </button>
        <button type="button" onClick={onLeave}>
          Leave it
        </button>
      </div>
    </form>
  );
}
