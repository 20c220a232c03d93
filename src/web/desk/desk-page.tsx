import type { Club } from "../../../shared/clubs.ts";
import type { Session } from "../../../shared/sessions.ts";
import { crewAddress, newNightAddress } from "../addresses.ts";
import { readClub, readSession } from "../api/service.ts";
import { useEvents } from "../api/use-events.ts";
import { useMay } from "../api/use-me.ts";
import { readBoard } from "../crew/crew-service.ts";
import { BookingState } from "../nights/booking-state.tsx";
import { FirstAnswer } from "../nights/first-answer.tsx";
import { Lost } from "../nights/lost.tsx";
import { NightFrame } from "../nights/night-frame.tsx";
import { Said } from "../nights/said.tsx";
import { type Current, useCurrent } from "../nights/use-current.ts";
import { useDeeds } from "../nights/use-deeds.ts";
import { DeskAnswer } from "./answer.tsx";
import { DeskContext, type DeskView } from "./desk.ts";
import { listMembers, type NightAddress, readBooking } from "./desk-service.ts";
import { Duties } from "./duties.tsx";
import { Fairness } from "./fairness.tsx";
import { LinkToCopy } from "./link-to-copy.tsx";
import { Manning } from "./manning.tsx";
import { NotesForm } from "./notes-form.tsx";
import { People } from "./people.tsx";

interface DeskPageProps {
  readonly club?: string;
  readonly session?: string;
}

/** The secretary's desk: will the night work, who is missing, and what everybody should know. */
export function DeskPage({ club = "", session = "" }: DeskPageProps) {
  const address = { club, session };
  const records = useCurrent(`${club} ${session}`, (signal) =>
    Promise.all([readClub(club, signal), readSession(club, session, signal)]),
  );
  const view = useCurrent(`${club} ${session}`, (signal) => readDesk(address, signal));
  const { isLost } = useEvents(club, {
    concerns: (event) => event.session === undefined || event.session === session,
    refresh: view.refresh,
  });
  const [record, night]: readonly [Club | null, Session | null] = records.value ?? [null, null];
  return (
    <NightFrame
      club={club}
      session={session}
      page="desk"
      record={record}
      night={night}
      state={view.value && <BookingState state={view.value.booking.state} />}
    >
      <Lost isLost={isLost} problem={view.value ? view.problem : null} again={view.refresh} />
      <FirstAnswer current={view} what="Looking whether the night works">
        {(value) => (
          <Desk address={address} view={value} current={view} timeZone={record?.timeZone ?? "UTC"} />
        )}
      </FirstAnswer>
    </NightFrame>
  );
}

async function readDesk(address: NightAddress, signal: AbortSignal): Promise<DeskView> {
  const [booking, members] = await Promise.all([
    readBooking(address, signal),
    listMembers(address.club, signal),
  ]);
  const boards = await Promise.all(booking.slots.map(({ slot }) => readBoard({ ...address, slot }, signal)));
  const byName = [...members].sort((a, b) => a.name.localeCompare(b.name, "en"));
  return { booking, boards, members: byName };
}

interface DeskProps {
  readonly address: NightAddress;
  readonly view: DeskView;
  readonly current: Current<DeskView>;
  readonly timeZone: string;
}

function Desk({ address, view, current, timeZone }: DeskProps) {
  const deeds = useDeeds(current);
  const mayBook = useMay(address.club, "book");
  const { booking } = view;
  const version = () => (current.latest() ?? view).booking.version;
  return (
    <DeskContext.Provider value={{ ...view, address, timeZone, deeds, mayBook, version }}>
      <Said done={deeds.done} refused={deeds.refused} isBusy={deeds.isBusy} forget={deeds.forget} />
      <DeskAnswer />
      {booking.state !== "draft" && (
        <LinkToCopy label="For the members" address={crewAddress(address.club, address.session)} />
      )}
      <div class="desk">
        <div>
          <Manning />
          {mayBook && <Duties />}
        </div>
        <div>
          <People />
          {mayBook ? <NotesForm /> : <NotesToRead booking={booking} />}
          {mayBook && (
            <>
              <Fairness />
              <p>
                <a class="link-button" href={newNightAddress(address.club, address.session)}>
                  Copy this night
                </a>
              </p>
            </>
          )}
        </div>
      </div>
    </DeskContext.Provider>
  );
}

function NotesToRead({ booking: { noteToAll, venueNote } }: Pick<DeskView, "booking">) {
  return (
    <>
      {noteToAll && <p class="note-to-all">{noteToAll}</p>}
      {venueNote && <p class="note-to-all">{venueNote}</p>}
    </>
  );
}
