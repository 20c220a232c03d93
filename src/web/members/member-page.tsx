import { useState } from "preact/hooks";
import type { MemberAccount } from "../../../shared/accounts.ts";
import { membersAddress } from "../addresses.ts";
import type { Answer } from "../api/ask.ts";
import { listAccounts, listMembers, type MemberRecord, readMember } from "../api/members.ts";
import { useLoad } from "../api/use-load.ts";
import { useMe } from "../api/use-me.ts";
import { Crumb } from "../shell/crumb.tsx";
import { Loaded } from "../shell/loaded.tsx";
import { Page } from "../shell/page.tsx";
import { Section } from "../shell/section.tsx";
import { InvitationPart } from "./invitation-part.tsx";
import { MemberEditor } from "./member-editor.tsx";
import { RemovePart } from "./remove-part.tsx";

interface MemberPageProps {
  readonly club?: string;
  readonly member?: string;
}

interface MemberView {
  readonly record: Answer<MemberRecord>;
  readonly members: readonly MemberRecord[];
  readonly account: MemberAccount | undefined;
}

/** A member as the secretary keeps them: what the list says, and whether they can sign in. */
export function MemberPage({ club = "", member = "" }: MemberPageProps) {
  const load = useLoad<MemberView>(`${club} ${member}`, async (signal) => {
    const [record, members, accounts] = await Promise.all([
      readMember(club, member, signal),
      listMembers(club, signal),
      listAccounts(club, signal),
    ]);
    return { record, members, account: accounts.find((one) => one.member === member) };
  });
  const name = load.status === "ready" ? load.value.record.value.name : member;
  return (
    <Page title={name} heading={name} intro={<Crumb href={membersAddress(club)} words="Members" />}>
      <Loaded load={load} what="Looking up the member">
        {(view, again) => <MemberParts key={view.record.etag} club={club} view={view} again={again} />}
      </Loaded>
    </Page>
  );
}

interface MemberPartsProps {
  readonly club: string;
  readonly view: MemberView;
  readonly again: () => void;
}

function MemberParts({ club, view, again }: MemberPartsProps) {
  const [record, setRecord] = useState(view.record);
  const { clubs } = useMe();
  const isMe = clubs.some(({ code, member }) => code === club && member === record.value.code);
  return (
    <>
      <Section heading="In the club's list" about="All members of the club can read this.">
        <MemberEditor club={club} record={record} members={view.members} onSaved={setRecord} again={again} />
      </Section>
      <InvitationPart club={club} member={record.value} account={view.account} isMe={isMe} again={again} />
      {!isMe && <RemovePart club={club} record={record} />}
    </>
  );
}
