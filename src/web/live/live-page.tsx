import { useEffect } from "preact/hooks";
import type { Club } from "../../../shared/clubs.ts";
import type { Night } from "../../../shared/night.ts";
import type { Session } from "../../../shared/sessions.ts";
import { readClub, readSession } from "../api/service.ts";
import { useEvents } from "../api/use-events.ts";
import { useMay } from "../api/use-me.ts";
import { BookingState } from "../nights/booking-state.tsx";
import { FirstAnswer } from "../nights/first-answer.tsx";
import { Lost } from "../nights/lost.tsx";
import { NightFrame } from "../nights/night-frame.tsx";
import { Said } from "../nights/said.tsx";
import { type Current, useCurrent } from "../nights/use-current.ts";
import { useDeeds } from "../nights/use-deeds.ts";
import { LiveContext, type NightDeed } from "./board.ts";
import { BookingOn } from "./booking-on.tsx";
import { ClockPanel } from "./clock-panel.tsx";
import { HandsetDesk } from "./handset-desk.tsx";
import { Incidents } from "./incidents.tsx";
import { changeNight, readNight } from "./night-service.ts";
import { Trains } from "./trains.tsx";
import { useLayoutNow } from "./use-layout-now.ts";

interface LivePageProps {
  readonly club?: string;
  readonly session?: string;
}

/** What happens now, for the tablet beside the railway. */
export function LivePage({ club = "", session = "" }: LivePageProps) {
  const address = { club, session };
  const records = useCurrent(`${club} ${session}`, (signal) =>
    Promise.all([readClub(club, signal), readSession(club, session, signal)]),
  );
  const night = useCurrent(`${club} ${session}`, (signal) => readNight(address, signal));
  const { isLost } = useEvents(club, {
    concerns: (event) => event.session === undefined || event.session === session,
    refresh: night.refresh,
  });
  const [record, recorded]: readonly [Club | null, Session | null] = records.value ?? [null, null];
  return (
    <NightFrame
      club={club}
      session={session}
      slot={night.value?.clock.slot}
      page="live"
      record={record}
      night={recorded}
      state={night.value && <BookingState state={night.value.booking} />}
    >
      <Lost isLost={isLost} problem={night.value ? night.problem : null} again={night.refresh} />
      <FirstAnswer current={night} what="Looking up the night">
        {(value) => <Board club={club} night={value} current={night} />}
      </FirstAnswer>
    </NightFrame>
  );
}

interface BoardProps {
  readonly club: string;
  readonly night: Night;
  readonly current: Current<Night>;
}

/** States in which the night can be run; starting the clock of a locked night makes it running. */
const RUNNABLE: readonly Night["booking"][] = ["locked", "running"];

function Board({ club, night, current }: BoardProps) {
  const now = useLayoutNow(night.clock, current.receivedAt);
  const may = useMay(club, "run-night");
  const deeds = useDeeds(current);
  const address = { club, session: night.session };
  const act = ({ method, path, body, version, done, undo }: NightDeed): void =>
    void deeds.run({
      name: `${path} ${JSON.stringify(body)}`,
      deed: (key) => {
        const latest = current.latest() ?? night;
        return changeNight(address, { method, path, body, version: version?.(latest) }, key);
      },
      tell: () => ({ text: done, undo: undo && (() => act(undo)) }),
    });
  const isRunnable = RUNNABLE.includes(night.booking);
  const board = { club, night, now, mayRun: may && isRunnable, act };
  useWakeLock(board.mayRun);
  return (
    <LiveContext.Provider value={board}>
      <Said done={deeds.done} refused={deeds.refused} isBusy={deeds.isBusy} forget={deeds.forget} />
      {!isRunnable && <NotRunning state={night.booking} />}
      <div class="live">
        <div class="live-first">
          <ClockPanel />
          <Trains />
        </div>
        <div class="live-second">
          <BookingOn />
          <HandsetDesk />
          <Incidents />
        </div>
      </div>
    </LiveContext.Provider>
  );
}

const WHY_NOT = {
  draft: "This night is still a draft: it can be run once its desk has opened and locked it.",
  open: "This night is still open for claims: it can be run once its desk has locked it.",
  finished: "This night is over. What happened stays here to read.",
  cancelled: "This night was cancelled.",
} as const;

function NotRunning({ state }: { readonly state: Night["booking"] }) {
  return <p class="said">{WHY_NOT[state as keyof typeof WHY_NOT]}</p>;
}

/** Keeps the tablet's screen lit while the night is run, where the browser can. */
function useWakeLock(isWanted: boolean): void {
  useEffect(() => {
    if (!isWanted || !("wakeLock" in navigator)) return;
    let lock: { release(): Promise<void> } | null = null;
    let isLeft = false;
    const take = async () => {
      if (document.hidden) return;
      try {
        lock = await navigator.wakeLock.request("screen");
        if (isLeft) await lock.release();
      } catch {
        // refused, as on a low battery: the screen goes dark as usual
      }
    };
    void take();
    document.addEventListener("visibilitychange", take);
    return () => {
      isLeft = true;
      document.removeEventListener("visibilitychange", take);
      void lock?.release();
    };
  }, [isWanted]);
}
