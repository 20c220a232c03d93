import { useEffect, useState } from "preact/hooks";
import type { MyEvening } from "../../../shared/claims.ts";
import type { Club } from "../../../shared/clubs.ts";
import type { Night } from "../../../shared/night.ts";
import type { Session } from "../../../shared/sessions.ts";
import { crewAddress } from "../addresses.ts";
import { readClub, readSession, sessionPath } from "../api/service.ts";
import { useEvents } from "../api/use-events.ts";
import { titleOf } from "../crew/crew.ts";
import { readEvening } from "../crew/crew-service.ts";
import { equipmentOf } from "../crew/evening-list.tsx";
import { roomTime } from "../crew/times.ts";
import { readNight } from "../live/night-service.ts";
import { readingAfter } from "../live/reading.ts";
import { BookingState } from "../nights/booking-state.tsx";
import { endText } from "../nights/end-text.ts";
import { FirstAnswer } from "../nights/first-answer.tsx";
import { Lost } from "../nights/lost.tsx";
import { NightFrame } from "../nights/night-frame.tsx";
import { useCurrent } from "../nights/use-current.ts";
import { NextItem } from "./next-item.tsx";
import { type Due, dueOf } from "./when.ts";

interface EveningPageProps {
  readonly club?: string;
  readonly session?: string;
}

/** An evening with the night as it runs; the night is null before it does. */
interface Evening {
  readonly evening: MyEvening;
  readonly night: Night | null;
}

/** What do I do next, with what: the page a member opens on the night. */
export function EveningPage({ club = "", session = "" }: EveningPageProps) {
  const records = useCurrent(`${club} ${session}`, (signal) =>
    Promise.all([readClub(club, signal), readSession(club, session, signal)]),
  );
  const current = useCurrent(`${club} ${session}`, async (signal): Promise<Evening> => {
    const evening = await readEvening(club, session, signal);
    const runs = evening.state === "running" || evening.state === "locked";
    return { evening, night: runs ? await readNight({ club, session }, signal) : null };
  });
  const { isLost } = useEvents(club, {
    concerns: (event) => event.session === undefined || event.session === session,
    refresh: current.refresh,
  });
  const [record, night]: readonly [Club | null, Session | null] = records.value ?? [null, null];
  return (
    <NightFrame
      club={club}
      session={session}
      page="evening"
      record={record}
      night={night}
      state={current.value && <BookingState state={current.value.evening.state} />}
    >
      <Lost isLost={isLost} problem={current.value ? current.problem : null} again={current.refresh} />
      <FirstAnswer current={current} what="Looking up your evening">
        {(value) => <EveningView club={club} value={value} receivedAt={current.receivedAt} />}
      </FirstAnswer>
    </NightFrame>
  );
}

const TICK_MS = 5_000;

/** This device's time, every few seconds. */
function useNowMs(): number {
  const [now, setNow] = useState(Date.now);
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), TICK_MS);
    return () => clearInterval(timer);
  }, []);
  return now;
}

interface EveningViewProps {
  readonly club: string;
  readonly value: Evening;
  readonly receivedAt: number;
}

function EveningView({ club, value: { evening, night }, receivedAt }: EveningViewProps) {
  const now = useNowMs();
  const nowSeconds = night ? readingAfter(night.clock, Math.max(0, now - receivedAt)) : 0;
  const dues = evening.items.map((item) => dueOf(item, night, nowSeconds, now));
  const next = dues.find(({ isOver }) => !isOver);
  const later = dues.filter((due) => !due.isOver && due !== next);
  const over = dues.filter(({ isOver }) => isOver);
  return (
    <>
      {evening.noteToAll && <p class="note-to-all">{evening.noteToAll}</p>}
      {next ? (
        <NextItem due={next} timeZone={evening.timeZone} isPaused={night?.clock.state === "paused"} />
      ) : (
        <NothingNext club={club} evening={evening} />
      )}
      {later.length > 0 && (
        <>
          <h2>After that</h2>
          <Dues dues={later} timeZone={evening.timeZone} />
        </>
      )}
      {over.length > 0 && (
        <details class="fold">
          <summary>{over.length} done</summary>
          <Dues dues={over} timeZone={evening.timeZone} />
        </details>
      )}
      {evening.venueNote && (
        <>
          <h2>Where to come</h2>
          <p>{evening.venueNote}</p>
        </>
      )}
      {evening.items.length > 0 && (
        <p class="evening-links">
          <a href={`${sessionPath(club, evening.session)}/calendar.ics`} download>
            Put this evening in a calendar
          </a>
        </p>
      )}
    </>
  );
}

function NothingNext({ club, evening }: { readonly club: string; readonly evening: MyEvening }) {
  return (
    <div class="empty">
      <p>
        {evening.items.length === 0
          ? "You have nothing tonight yet."
          : "You have nothing more to do tonight."}
      </p>
      {evening.state === "open" && (
        <p>
          <a href={crewAddress(club, evening.session)}>See what you may drive</a>
        </p>
      )}
    </div>
  );
}

function Dues({ dues, timeZone }: { readonly dues: readonly Due[]; readonly timeZone: string }) {
  return (
    <ol class="crew-rows">
      {dues.map(({ item, tonight }) => (
        <li key={item.claim.id} class="crew-row">
          <p class="crew-when">
            <b>{roomTime(item.from.at, timeZone)}</b>
            <span>
              <span class="visually-hidden">layout </span>
              {tonight?.from.expectedLayout ?? item.from.layout}
            </span>
          </p>
          <div class="crew-what">
            <p>
              <strong>{titleOf(item.claim.kind, item.claim.code, item.name)}</strong>{" "}
              {item.claim.kind === "train" && item.name}
            </p>
            <p>
              {endText(item.from)}
              {item.claim.kind === "train" && ` → ${endText(item.to)}`}
            </p>
            <p class="crew-with">{equipmentOf(item).join(" · ")}</p>
          </div>
        </li>
      ))}
    </ol>
  );
}
