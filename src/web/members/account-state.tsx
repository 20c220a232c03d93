import type { MemberAccount } from "../../../shared/accounts.ts";

const WORDS = {
  none: "no account",
  invited: "invited",
  active: "yes",
} as const satisfies Record<MemberAccount["account"], string>;

/** Whether a member can sign in, and under which address. */
export function AccountState({ account }: { readonly account: MemberAccount | undefined }) {
  const state = account?.account ?? "none";
  return (
    <span class={`account-state account-${state}`}>
      {WORDS[state]}
      {account?.email && <span class="quiet"> {account.email}</span>}
    </span>
  );
}
