import { useEffect } from "preact/hooks";
import type { Board } from "../../../shared/claims.ts";
import type { Club } from "../../../shared/clubs.ts";
import type { Session } from "../../../shared/sessions.ts";
import { crewAddress } from "../addresses.ts";
import { readClub, readSession } from "../api/service.ts";
import { useEvents } from "../api/use-events.ts";
import { BookingState } from "../nights/booking-state.tsx";
import { FirstAnswer } from "../nights/first-answer.tsx";
import { Lost } from "../nights/lost.tsx";
import { NightFrame } from "../nights/night-frame.tsx";
import { Said } from "../nights/said.tsx";
import { type Current, useCurrent } from "../nights/use-current.ts";
import { useDeeds } from "../nights/use-deeds.ts";
import { CrewContext, createCrew } from "./crew.ts";
import { readBoard } from "./crew-service.ts";
import { EveningList } from "./evening-list.tsx";
import { BoardRows } from "./rows.tsx";
import { Swaps } from "./swaps.tsx";

interface CrewPageProps {
  readonly club?: string;
  readonly session?: string;
  readonly slot?: string;
}

/** Who does what: one's own evening, what one may claim, and what others have. */
export function CrewPage({ club = "", session = "", slot }: CrewPageProps) {
  const records = useCurrent(`${club} ${session}`, (signal) =>
    Promise.all([readClub(club, signal), readSession(club, session, signal)]),
  );
  const [record, night]: readonly [Club | null, Session | null] = records.value ?? [null, null];
  const shown = slot ?? night?.slots[0]?.code;
  const board = useCurrent(shown === undefined ? null : `${club} ${session} ${shown}`, (signal) =>
    readBoard({ club, session, slot: shown ?? "" }, signal),
  );
  const { isLost } = useEvents(club, {
    concerns: (event) => event.session === undefined || event.session === session,
    refresh: board.refresh,
  });
  const value = board.value;
  return (
    <NightFrame
      club={club}
      session={session}
      slot={shown}
      page="crew"
      record={record}
      night={night}
      state={value && <BookingState state={value.state} />}
    >
      <Lost isLost={isLost} problem={value ? board.problem : null} again={board.refresh} />
      {records.problem && !night ? (
        <FirstAnswer current={records} what="Looking up the night">
          {() => null}
        </FirstAnswer>
      ) : (
        <FirstAnswer current={board} what="Looking up the board">
          {(latest) => <CrewBoard club={club} board={latest} current={board} />}
        </FirstAnswer>
      )}
    </NightFrame>
  );
}

interface CrewBoardProps {
  readonly club: string;
  readonly board: Board;
  readonly current: Current<Board>;
}

function CrewBoard({ club, board, current }: CrewBoardProps) {
  const deeds = useDeeds(current);
  const { session, slot } = board;
  const crew = createCrew({ club, session, slot }, board, deeds);
  // another slot's board has nothing to do with what was said of this one
  useEffect(() => deeds.forget, [slot]);
  const isSaidInRow = deeds.about !== null && /^(claim|join|leave) /.test(deeds.about);
  return (
    <CrewContext.Provider value={crew}>
      {board.noteToAll && <p class="note-to-all">{board.noteToAll}</p>}
      <SlotTabs club={club} board={board} />
      <Said
        done={deeds.done}
        refused={isSaidInRow ? null : deeds.refused}
        isBusy={deeds.isBusy}
        forget={deeds.forget}
      />
      <NotOpen board={board} />
      <Swaps />
      <EveningList />
      <BoardRows />
    </CrewContext.Provider>
  );
}

function SlotTabs({ club, board }: { readonly club: string; readonly board: Board }) {
  if (board.slots.length < 2) return null;
  return (
    <nav aria-label="Slots of this night">
      <ul class="slot-tabs">
        {board.slots.map(({ code, name }) => (
          <li key={code}>
            <a
              href={crewAddress(club, board.session, code)}
              aria-current={code === board.slot ? "page" : undefined}
            >
              {name}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

const WHY_NOT = {
  draft: "This night is not open for claims yet. Who has what is shown once the secretary opens it.",
  open: null,
  locked:
    "This night is locked: who does what stays as it is. Ask the secretary where something must change.",
  running: "This night is under way.",
  finished: "This night is over.",
  cancelled: "This night was cancelled.",
} as const;

function NotOpen({ board }: { readonly board: Board }) {
  const why = WHY_NOT[board.state];
  if (board.me === null && board.state === "open")
    return <p class="said">You are in no list of members here, so you can look but not claim.</p>;
  return why === null ? null : <p class="said">{why}</p>;
}
