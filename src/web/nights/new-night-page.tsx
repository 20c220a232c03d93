import { useEffect } from "preact/hooks";
import { useLocation } from "preact-iso";
import type { Club } from "../../../shared/clubs.ts";
import type { Session } from "../../../shared/sessions.ts";
import { deskAddress, nightsAddress } from "../addresses.ts";
import { readClub } from "../api/service.ts";
import { useLoad } from "../api/use-load.ts";
import { clubName } from "../shell/club-name.ts";
import { Loaded } from "../shell/loaded.tsx";
import { Page } from "../shell/page.tsx";
import { NewNightForm } from "./new-night-form.tsx";
import { copyNight, datesOf, dateThere, firstNight } from "./night-draft.ts";
import { listAreas, listNights, listVersions, makeNight } from "./night-records.ts";
import { Said } from "./said.tsx";
import type { VersionChoice } from "./slot-fields.tsx";
import { useDeed } from "./use-deed.ts";

/** A night to be made, as one that is already there or from nothing. */
export function NewNightPage({ club = "" }: { readonly club?: string }) {
  const { query } = useLocation();
  const load = useLoad(club, (signal) =>
    Promise.all([
      readClub(club, signal),
      listNights(club, signal),
      listAreas(club, signal),
      listVersions(club, signal),
    ]),
  );
  const name = load.status === "ready" ? load.value[0].name : null;
  useEffect(() => {
    if (name !== null) clubName.value = name;
  }, [name]);
  return (
    <Page title="A new night" heading="A new night" class="night-page">
      <nav class="crumbs night-intro" aria-label="Where you are">
        <a href={nightsAddress(club)}>Nights</a>
      </nav>
      <Loaded load={load} what="Looking up nights and timetables">
        {([record, nights, areas, versions]) => (
          <NewNight
            club={record}
            nights={nights}
            areas={areas.map(({ code }) => code)}
            versions={versions}
            from={query.from}
          />
        )}
      </Loaded>
    </Page>
  );
}

interface NewNightProps {
  readonly club: Club;
  readonly nights: readonly Session[];
  readonly areas: readonly string[];
  readonly versions: readonly VersionChoice[];
  /** Code of the night to copy. */
  readonly from: string | undefined;
}

const start = ({ slots }: Session) => Math.min(...slots.map(({ startsAt }) => Date.parse(startsAt)));

/** The latest night of all, preferring those that run only issued timetables: others can't be opened. */
function lastToCopy(nights: readonly Session[], versions: readonly VersionChoice[]): Session | undefined {
  const isIssued = ({ slots }: Session) =>
    slots.every((slot) =>
      versions.some(
        (v) => v.isIssued && v.timetable === slot.timetable && v.version === slot.timetableVersion,
      ),
    );
  return [...nights].sort((a, b) => Number(isIssued(b)) - Number(isIssued(a)) || start(b) - start(a))[0];
}

function NewNight({ club, nights, areas, versions, from }: NewNightProps) {
  const { route } = useLocation();
  const doing = useDeed();
  const today = dateThere(new Date(), club.timeZone);
  const copied = nights.find(({ code }) => code === from) ?? lastToCopy(nights, versions);
  if (versions.length === 0)
    return <p class="empty">The club has no timetable yet: a night needs one to run.</p>;
  const first = versions[0];
  const draft = copied
    ? copyNight(copied, today, datesOf(nights))
    : firstNight(today, areas, first ? { code: first.timetable, version: first.version } : null);
  const make = async (session: Session) => {
    const isMade = await doing.run(JSON.stringify(session), (key) => makeNight(club.code, session, key));
    if (isMade) route(deskAddress(club.code, session.code));
  };
  return (
    <>
      {copied && <p class="quiet">Everything is taken over from {copied.name}; change what differs.</p>}
      <Said
        done={null}
        refused={doing.refused?.problem ?? null}
        isBusy={doing.busy !== null}
        forget={doing.forget}
      />
      <NewNightForm
        start={draft}
        versions={versions}
        taken={new Set(nights.map(({ code }) => code))}
        isBusy={doing.busy !== null}
        make={make}
      />
    </>
  );
}
