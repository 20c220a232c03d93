import { useEffect } from "preact/hooks";
import { useLocation } from "preact-iso";
import type { Club } from "../../../shared/clubs.ts";
import type { Session } from "../../../shared/sessions.ts";
import { loadAddress, nightsAddress, panelAddress, planAddress } from "../addresses.ts";
import { checkSlot, readClub, readSession } from "../api/service.ts";
import { useLoad } from "../api/use-load.ts";
import { slotDates } from "../nights/night-dates.ts";
import { clubName } from "../shell/club-name.ts";
import { Loaded } from "../shell/loaded.tsx";
import { Page } from "../shell/page.tsx";
import { Plan } from "./plan.tsx";

interface PlanPageProps {
  readonly club?: string;
  readonly session?: string;
  readonly slot?: string;
}

/** Does the night run, and if not: why, where, when. */
export function PlanPage({ club = "", session = "", slot = "" }: PlanPageProps) {
  const { path } = useLocation();
  const load = useLoad(path, (signal) =>
    Promise.all([
      readClub(club, signal),
      readSession(club, session, signal),
      checkSlot({ club, session, slot }, signal),
    ]),
  );
  const [record, night] = load.status === "ready" ? load.value : [null, null];
  useEffect(() => {
    clubName.value = record?.name ?? null;
  }, [record]);
  return (
    <Page
      title={night?.name ?? session}
      heading={night?.name ?? session}
      class="plan-page"
      intro={<WhichSlot club={record} code={club} session={night} slot={slot} />}
    >
      <Loaded load={load} what="Checking the night">
        {([{ timeZone }, , report], again) => (
          <Plan key={path} report={report} timeZone={timeZone} again={again} />
        )}
      </Loaded>
    </Page>
  );
}

interface WhichSlotProps {
  readonly club: Club | null;
  /** Of the club. */
  readonly code: string;
  readonly session: Session | null;
  readonly slot: string;
}

/** The way back, the slot's hours, and the night's other slots. */
function WhichSlot({ club, code, session, slot }: WhichSlotProps) {
  const here = session?.slots.find((s) => s.code === slot);
  const dates = club && here ? slotDates(here, club.timeZone) : null;
  return (
    <div class="which-slot">
      <nav class="crumbs" aria-label="Where you are">
        <a href={nightsAddress(code)}>Nights</a> <span aria-hidden="true">›</span>{" "}
        <span aria-current="page">Plan</span>
      </nav>
      {dates && here && session && (
        <p>
          <span class="no-break">
            {dates.weekday} {dates.date}, {dates.hours}
          </span>{" "}
          <span class="no-break">
            layout from {here.layoutStart}, {session.clockRatio} times as fast
          </span>
        </p>
      )}
      {session && (
        <nav class="slot-ways" aria-label="More of this slot">
          <a href={loadAddress(code, session.code, slot)}>Will it trip?</a>
          {session.areas.some(({ control }) => control === "analog") && (
            <a href={panelAddress(code, session.code, slot)}>Selector schedule</a>
          )}
        </nav>
      )}
      {session && session.slots.length > 1 && (
        <nav aria-label="Slots of this night">
          <ul class="slot-tabs">
            {session.slots.map((s) => (
              <li key={s.code}>
                <a
                  href={planAddress(code, session.code, s.code)}
                  aria-current={s.code === slot ? "page" : undefined}
                >
                  {s.name}
                </a>
              </li>
            ))}
          </ul>
        </nav>
      )}
    </div>
  );
}
