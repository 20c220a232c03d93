import { useState } from "preact/hooks";
import type { MemberAccount } from "../../../shared/accounts.ts";
import { newMemberAddress } from "../addresses.ts";
import { listAccounts, listMembers, type MemberRecord } from "../api/members.ts";
import { useEvents } from "../api/use-events.ts";
import { useMay } from "../api/use-me.ts";
import { FirstAnswer } from "../nights/first-answer.tsx";
import { Lost } from "../nights/lost.tsx";
import { useCurrent } from "../nights/use-current.ts";
import { Page } from "../shell/page.tsx";
import { findMembers } from "./find-members.ts";
import { MembersTable } from "./members-table.tsx";

interface Roster {
  readonly members: readonly MemberRecord[];
  /** By member; null for who is not told. */
  readonly accounts: ReadonlyMap<string, MemberAccount> | null;
}

/** Who belongs to the club, what each may drive and do; for the secretary, who can sign in. */
export function MembersPage({ club = "" }: { readonly club?: string }) {
  const mayKeep = useMay(club, "keep-members");
  const current = useCurrent<Roster>(`${club} ${mayKeep}`, async (signal) => {
    const [members, accounts] = await Promise.all([
      listMembers(club, signal),
      mayKeep ? listAccounts(club, signal) : null,
    ]);
    return { members, accounts: accounts && new Map(accounts.map((one) => [one.member, one])) };
  });
  const { isLost } = useEvents(club, {
    concerns: ({ kind }) => kind === "member" || kind === "membership",
    refresh: current.refresh,
  });
  return (
    <Page title="Members" heading="Members">
      <Lost isLost={isLost} problem={current.value ? current.problem : null} again={current.refresh} />
      <FirstAnswer current={current} what="Looking up the members">
        {({ members, accounts }) => <Members club={club} members={members} accounts={accounts} />}
      </FirstAnswer>
    </Page>
  );
}

function Members({ club, members, accounts }: Roster & { readonly club: string }) {
  const [find, setFind] = useState(new URLSearchParams(location.search).get("find") ?? "");
  const keepFind = (text: string) => {
    setFind(text);
    history.replaceState(
      null,
      "",
      text === "" ? location.pathname : `?${new URLSearchParams({ find: text })}`,
    );
  };
  const found = findMembers(members, find);
  return (
    <>
      <p class="lead">{countText(members, accounts)}</p>
      <div class="tools">
        <label class="find">
          <span>Find</span>
          <input
            type="search"
            value={find}
            placeholder="Name, role, or passed for"
            onInput={(event) => keepFind(event.currentTarget.value)}
          />
        </label>
        {accounts && (
          <a class="button" href={newMemberAddress(club)}>
            New member
          </a>
        )}
      </div>
      <p class="visually-hidden" role="status">
        {find && `${found.length} of ${members.length} shown`}
      </p>
      {found.length > 0 ? (
        <MembersTable club={club} members={found} accounts={accounts} />
      ) : (
        <NoneFound find={find} mayKeep={accounts !== null} />
      )}
    </>
  );
}

function NoneFound({ find, mayKeep }: { readonly find: string; readonly mayKeep: boolean }) {
  if (find !== "")
    return <p class="quiet">No member has “{find}” in the name, role or what they are passed for.</p>;
  return (
    <div class="empty">
      <p>Nobody is in the club's list yet.</p>
      {mayKeep && (
        <p>
          Add those who drive and those who help. What each is passed for decides which trains they may claim;
          an invitation lets them do it themselves.
        </p>
      )}
    </div>
  );
}

const counted = (n: number, one: string, many: string) => `${n} ${n === 1 ? one : many}`;

function countText(members: readonly MemberRecord[], accounts: Roster["accounts"]): string {
  const juniors = members.filter(({ junior }) => junior).length;
  const active = members.filter(({ code }) => accounts?.get(code)?.account === "active").length;
  return [
    counted(members.length, "member", "members"),
    juniors > 0 && counted(juniors, "junior", "juniors"),
    accounts && `${active} can sign in`,
  ]
    .filter(Boolean)
    .join(", ");
}
