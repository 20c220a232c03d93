import { useState } from "preact/hooks";
import type { AccessToken } from "../../../shared/accounts.ts";
import { listTokens, revokeToken } from "../api/account.ts";
import { useLoad } from "../api/use-load.ts";
import { useMe } from "../api/use-me.ts";
import { ForGood } from "../shell/for-good.tsx";
import { dayAndTime } from "../shell/instant.ts";
import { Loaded } from "../shell/loaded.tsx";
import { Refused } from "../shell/refused.tsx";
import { Section } from "../shell/section.tsx";
import { useSubmit } from "../shell/use-submit.ts";
import { NewToken } from "./new-token.tsx";

/** Keys with which one's scripts may use the service in one's name. */
export function TokensPart() {
  const [round, setRound] = useState(0);
  const load = useLoad(`tokens ${round}`, listTokens);
  const again = () => setRound((n) => n + 1);
  return (
    <Section
      heading="Tokens for scripts"
      about="With a token, a program may do in your name what you let it. Make one for each program, so that you can revoke one alone."
    >
      <Loaded load={load} what="Reading your tokens">
        {(tokens) => <Tokens tokens={tokens} again={again} />}
      </Loaded>
      <NewToken onMade={again} />
    </Section>
  );
}

function Tokens({ tokens, again }: { readonly tokens: readonly AccessToken[]; readonly again: () => void }) {
  const { isBusy, problem, run } = useSubmit(async (id: string) => {
    await revokeToken(id);
    again();
  });
  if (tokens.length === 0) return <p class="quiet">You have none.</p>;
  return (
    <>
      <ul class="rows">
        {tokens.map((token) => (
          <li key={token.id} class="row">
            <TokenWords token={token} />
            <ForGood
              word="Revoke"
              what={`the token ${token.name}`}
              isBusy={isBusy}
              onSure={() => void run(token.id)}
            />
          </li>
        ))}
      </ul>
      <Refused problem={problem} />
    </>
  );
}

function TokenWords({ token }: { readonly token: AccessToken }) {
  const { clubs } = useMe();
  const where =
    token.club === null
      ? "all your clubs"
      : (clubs.find(({ code }) => code === token.club)?.name ?? token.club);
  const isOver = Date.parse(token.expiresAt) <= Date.now();
  return (
    <div>
      <strong>{token.name}</strong>
      <p class="quiet">
        {token.scope === "read" ? "Reads" : "Reads and changes"} {where}; {isOver ? "ran out" : "good until"}{" "}
        {dayAndTime(token.expiresAt)};{" "}
        {token.lastUsedAt === null ? "never used" : `last used ${dayAndTime(token.lastUsedAt)}`}
      </p>
    </div>
  );
}
