import { useLocation } from "preact-iso";
import { memberAddress, membersAddress } from "../addresses.ts";
import { createMember, listMembers } from "../api/members.ts";
import { useLoad } from "../api/use-load.ts";
import { Crumb } from "../shell/crumb.tsx";
import { Loaded } from "../shell/loaded.tsx";
import { Page } from "../shell/page.tsx";
import { knownTags } from "./find-members.ts";
import { MemberForm, NEW_MEMBER } from "./member-form.tsx";

/** Someone new in the club's list; the invitation comes next. */
export function NewMemberPage({ club = "" }: { readonly club?: string }) {
  const { route } = useLocation();
  const load = useLoad(club, (signal) => listMembers(club, signal));
  return (
    <Page
      title="New member"
      heading="New member"
      intro={<Crumb href={membersAddress(club)} words="Members" />}
    >
      <Loaded load={load} what="Looking up the members">
        {(members) => (
          <MemberForm
            member={NEW_MEMBER}
            tags={knownTags(members)}
            taken={new Set(members.map(({ code }) => code))}
            word="Add the member"
            save={async (body) => {
              const { value } = await createMember(club, body);
              route(memberAddress(club, value.code), true);
            }}
          />
        )}
      </Loaded>
    </Page>
  );
}
