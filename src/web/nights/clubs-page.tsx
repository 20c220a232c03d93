import { useEffect } from "preact/hooks";
import { useLocation } from "preact-iso";
import type { Club } from "../../../shared/clubs.ts";
import { nightsAddress } from "../addresses.ts";
import { listClubs } from "../api/service.ts";
import { useLoad } from "../api/use-load.ts";
import { Loaded } from "../shell/loaded.tsx";
import { Page } from "../shell/page.tsx";
import { NoClub } from "../start/no-club.tsx";

/** The door. With one club it opens by itself; with several one chooses. */
export function ClubsPage() {
  const load = useLoad("clubs", listClubs);
  const isNew = load.status === "ready" && load.value.items.length === 0;
  return (
    <Page title="Clubs" heading={isNew ? "Welcome" : "Clubs"}>
      <Loaded load={load} what="Looking for clubs">
        {({ items }) => <Clubs clubs={items} />}
      </Loaded>
    </Page>
  );
}

function Clubs({ clubs }: { readonly clubs: readonly Club[] }) {
  const { route } = useLocation();
  const only = clubs.length === 1 ? clubs[0] : undefined;
  useEffect(() => {
    if (only) route(nightsAddress(only.code), true);
  }, [only, route]);
  if (only) return null;
  if (clubs.length === 0) return <NoClub />;
  return (
    <ul class="clubs">
      {clubs.map(({ code, name }) => (
        <li key={code}>
          <a href={nightsAddress(code)}>{name}</a>
        </li>
      ))}
    </ul>
  );
}
