import { useEffect, useState } from "preact/hooks";
import type { Club } from "../../../shared/clubs.ts";
import { listMembers, type MemberRecord } from "../api/members.ts";
import { readClub } from "../api/service.ts";
import { useLoad } from "../api/use-load.ts";
import { clubName } from "../shell/club-name.ts";
import { Loaded } from "../shell/loaded.tsx";
import { Page } from "../shell/page.tsx";
import { readTrailAddress, writeTrailAddress } from "./trail-address.ts";
import { TrailFilters } from "./trail-filters.tsx";
import { TrailList } from "./trail-list.tsx";

/** Who changed what, when, from what to what. */
export function TrailPage({ club = "" }: { readonly club?: string }) {
  const load = useLoad(club, (signal) => Promise.all([readClub(club, signal), listMembers(club, signal)]));
  return (
    <Page
      title="Trail"
      heading="Trail"
      intro={<p class="lead">Who changed what, and when. Nobody can change the trail.</p>}
    >
      <Loaded load={load} what="Looking up the club">
        {([record, members]) => <Trail club={record} members={members} />}
      </Loaded>
    </Page>
  );
}

interface TrailProps {
  readonly club: Club;
  readonly members: readonly MemberRecord[];
}

function Trail({ club, members }: TrailProps) {
  const [filter, setFilter] = useState(() => readTrailAddress(location.search));
  useEffect(() => {
    clubName.value = club.name;
  }, [club.name]);
  return (
    <>
      <TrailFilters
        filter={filter}
        members={members}
        onFilter={(next) => {
          setFilter(next);
          history.replaceState(null, "", `${location.pathname}${writeTrailAddress(next)}`);
        }}
      />
      <TrailList key={writeTrailAddress(filter)} club={club} filter={filter} />
    </>
  );
}
