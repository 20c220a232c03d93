import { useCallback, useEffect, useState } from "preact/hooks";
import type { Club } from "../../../shared/clubs.ts";
import type { TrailEntry } from "../../../shared/trail.ts";
import { readClub } from "../api/service.ts";
import { useLoad } from "../api/use-load.ts";
import { clubName } from "../shell/club-name.ts";
import { Loaded } from "../shell/loaded.tsx";
import { Page } from "../shell/page.tsx";
import { readTrailAddress, type TrailAddress, writeTrailAddress } from "./trail-address.ts";
import { TrailFilters } from "./trail-filters.tsx";
import { TrailList } from "./trail-list.tsx";

/** Who changed what, when, from what to what. */
export function TrailPage({ club = "" }: { readonly club?: string }) {
  const load = useLoad(club, (signal) => readClub(club, signal));
  return (
    <Page
      title="Trail"
      heading="Trail"
      intro={<p class="lead">Who changed what, and when. Nobody can change the trail.</p>}
    >
      <Loaded load={load} what="Looking up the club">
        {(record) => <Trail club={record} />}
      </Loaded>
    </Page>
  );
}

function Trail({ club }: { readonly club: Club }) {
  const [filter, setFilter] = useState(() => readTrailAddress(location.search));
  const [people, setPeople] = useState<ReadonlyMap<string, string>>(new Map());
  useEffect(() => {
    clubName.value = club.name;
  }, [club.name]);
  const keep = useCallback((next: TrailAddress) => {
    setFilter(next);
    history.replaceState(null, "", `${location.pathname}${writeTrailAddress(next)}`);
  }, []);
  const meet = useCallback((entries: readonly TrailEntry[]) => {
    const met = entries.flatMap(({ by }): [string, string][] => (by?.name ? [[by.person, by.name]] : []));
    setPeople((known) => (met.every(([id]) => known.has(id)) ? known : new Map([...known, ...met])));
  }, []);
  return (
    <>
      <TrailFilters filter={filter} people={people} onFilter={keep} />
      <TrailList
        key={writeTrailAddress(filter)}
        club={club}
        filter={filter}
        onShown={meet}
        onPerson={(person) => keep({ ...filter, person })}
      />
    </>
  );
}
