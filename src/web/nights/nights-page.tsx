import { useCallback, useEffect, useState } from "preact/hooks";
import type { Club } from "../../../shared/clubs.ts";
import type { Session } from "../../../shared/sessions.ts";
import { newNightAddress } from "../addresses.ts";
import { Problem } from "../api/problem.ts";
import { type ListPage, listSessions, readClub } from "../api/service.ts";
import { useEvents } from "../api/use-events.ts";
import { useLoad } from "../api/use-load.ts";
import { useMay } from "../api/use-me.ts";
import { clubName } from "../shell/club-name.ts";
import { Loaded } from "../shell/loaded.tsx";
import { Page } from "../shell/page.tsx";
import { FirstSteps } from "../start/first-steps.tsx";
import { listBookings } from "./night-records.ts";
import { NightRow } from "./night-row.tsx";
import { useCurrent } from "./use-current.ts";

/** What is coming, and does it run. */
export function NightsPage({ club = "" }: { readonly club?: string }) {
  const load = useLoad(club, (signal) =>
    Promise.all([readClub(club, signal), listSessions(club, null, signal)]),
  );
  const name = load.status === "ready" ? load.value[0].name : null;
  useEffect(() => {
    clubName.value = name;
  }, [name]);
  return (
    <Page title={name === null ? "Nights" : `Nights of ${name}`} heading="Nights">
      <Loaded load={load} what="Looking up the nights">
        {([record, first]) => <Nights club={record} first={first} />}
      </Loaded>
    </Page>
  );
}

/** For whoever may book a night. */
function NewNightLink({ club }: { readonly club: string }) {
  if (!useMay(club, "book")) return null;
  return (
    <p>
      <a class="link-button" href={newNightAddress(club)}>
        A new night
      </a>
    </p>
  );
}

interface NightsProps {
  readonly club: Club;
  readonly first: ListPage<Session>;
}

/** A session starts when its first slot does. */
const start = (session: Session) => Math.min(...session.slots.map((slot) => Date.parse(slot.startsAt)));

function Nights({ club, first }: NightsProps) {
  const [sessions, setSessions] = useState<readonly Session[]>(first.items);
  const [next, setNext] = useState(first.next);
  const [failed, setFailed] = useState("");
  const bookings = useCurrent(club.code, (signal) => listBookings(club.code, signal));
  useEvents(club.code, { refresh: bookings.refresh });
  const more = useCallback(async () => {
    try {
      const page = await listSessions(club.code, next, new AbortController().signal);
      setSessions((known) => [...known, ...page.items]);
      setNext(page.next);
      setFailed("");
    } catch (error) {
      setFailed(error instanceof Problem ? error.happened : String(error));
    }
  }, [club.code, next]);
  if (sessions.length === 0) return <FirstSteps club={club} />;
  const ordered = [...sessions].sort((a, b) => start(a) - start(b) || (a.code < b.code ? -1 : 1));
  return (
    <>
      <NewNightLink club={club.code} />
      <ol class="nights">
        {ordered.map((session) => (
          <NightRow
            key={session.code}
            club={club}
            session={session}
            booking={bookings.value?.items.find((item) => item.session === session.code)}
          />
        ))}
      </ol>
      {failed && <p role="alert">{failed} The nights above are still right.</p>}
      {next !== null && (
        <button type="button" onClick={more}>
          Show more nights
        </button>
      )}
    </>
  );
}
