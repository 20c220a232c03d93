import type { ComponentChildren } from "preact";
import { useEffect } from "preact/hooks";
import type { Club } from "../../../shared/clubs.ts";
import type { Session } from "../../../shared/sessions.ts";
import {
  crewAddress,
  deskAddress,
  eveningAddress,
  liveAddress,
  nightsAddress,
  planAddress,
} from "../addresses.ts";
import { clubName } from "../shell/club-name.ts";
import { Page } from "../shell/page.tsx";
import { slotDates } from "./night-dates.ts";

/** The pages of one night. */
export const NIGHT_PAGES = ["evening", "crew", "plan", "live", "desk"] as const;
export type NightPage = (typeof NIGHT_PAGES)[number];

const WORDS = {
  evening: "My evening",
  crew: "Crew",
  plan: "Plan",
  live: "Live",
  desk: "Desk",
} as const satisfies Record<NightPage, string>;

interface NightFrameProps {
  readonly club: string;
  readonly session: string;
  /** The slot looked at, where the page is of one. */
  readonly slot?: string | undefined;
  readonly page: NightPage;
  readonly record: Club | null;
  readonly night: Session | null;
  /** Beside the date: the booking's state. */
  readonly state?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** What the pages of a night have in common: its name and date, and the way to its other pages and slots. */
export function NightFrame(props: NightFrameProps) {
  const { page, record, night, session } = props;
  useEffect(() => {
    if (record) clubName.value = record.name;
  }, [record]);
  const name = night?.name ?? session;
  return (
    <Page
      title={`${WORDS[page]} · ${name}`}
      heading={name}
      class={`night-page ${page}-page`}
      intro={<Intro {...props} />}
    >
      {props.children}
    </Page>
  );
}

function Intro({ club, session, slot, page, record, night, state }: NightFrameProps) {
  const first = night?.slots[0];
  const dates = first && record ? slotDates(first, record.timeZone) : null;
  return (
    <div class="night-intro">
      <nav class="crumbs" aria-label="Where you are">
        <a href={nightsAddress(club)}>Nights</a>
      </nav>
      {dates && (
        <p>
          {dates.weekday} {dates.date}, {dates.hours.slice(0, 5)}
        </p>
      )}
      {state}
      <NightTabs club={club} session={session} slot={slot ?? first?.code} page={page} />
    </div>
  );
}

interface NightTabsProps {
  readonly club: string;
  readonly session: string;
  readonly slot: string | undefined;
  readonly page: NightPage;
}

/** The way from one page of a night to the others. */
export function NightTabs({ club, session, slot, page }: NightTabsProps) {
  const addresses: Record<NightPage, string | null> = {
    evening: eveningAddress(club, session),
    crew: crewAddress(club, session, slot),
    plan: slot === undefined ? null : planAddress(club, session, slot),
    live: liveAddress(club, session),
    desk: deskAddress(club, session),
  };
  return (
    <nav class="night-tabs" aria-label="Pages of this night">
      {NIGHT_PAGES.map((one) => {
        const href = addresses[one];
        return (
          href !== null && (
            <a key={one} href={href} aria-current={one === page ? "page" : undefined}>
              {WORDS[one]}
            </a>
          )
        );
      })}
    </nav>
  );
}
