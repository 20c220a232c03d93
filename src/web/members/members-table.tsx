import type { MemberAccount } from "../../../shared/accounts.ts";
import { memberAddress } from "../addresses.ts";
import type { MemberRecord } from "../api/members.ts";
import { roleList } from "../shell/role-words.ts";
import { AccountState } from "./account-state.tsx";

interface MembersTableProps {
  readonly club: string;
  readonly members: readonly MemberRecord[];
  readonly accounts: ReadonlyMap<string, MemberAccount> | null;
}

/** A row each; on a phone each row is a card. */
export function MembersTable({ club, members, accounts }: MembersTableProps) {
  return (
    <table class="cards members">
      <thead>
        <tr>
          <th scope="col">Name</th>
          <th scope="col">Passed for</th>
          <th scope="col">Role</th>
          {accounts && <th scope="col">Signs in</th>}
        </tr>
      </thead>
      <tbody>
        {members.map((member) => (
          <tr key={member.code}>
            <th scope="row">
              {accounts ? <a href={memberAddress(club, member.code)}>{member.name}</a> : member.name}
              {member.junior && <span class="tag tag-junior">Junior</span>}
            </th>
            <td data-label="Passed for">
              {member.passedFor.length > 0 ? (
                member.passedFor.map((tag) => (
                  <span key={tag} class="tag">
                    {tag}
                  </span>
                ))
              ) : (
                <span class="quiet">nothing yet</span>
              )}
            </td>
            <td data-label="Role">{roleList(member.roles)}</td>
            {accounts && (
              <td data-label="Signs in">
                <AccountState account={accounts.get(member.code)} />
              </td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
