import { useEffect } from "preact/hooks";
import { useLocation } from "preact-iso";
import { loadAddress, nightsAddress, planAddress } from "../addresses.ts";
import { useLoad } from "../api/use-load.ts";
import { slotDates } from "../nights/night-dates.ts";
import { clubName } from "../shell/club-name.ts";
import { Loaded } from "../shell/loaded.tsx";
import { Page } from "../shell/page.tsx";
import { readStart, type SlotCodes, type Start } from "./load-service.ts";
import { LoadView } from "./load-view.tsx";

type LoadPageProps = Partial<SlotCodes>;

/** Will it trip? */
export function LoadPage({ club = "", session = "", slot = "" }: LoadPageProps) {
  const { path } = useLocation();
  const codes = { club, session, slot };
  const load = useLoad(path, (signal) => readStart(codes, signal));
  const start = load.status === "ready" ? load.value : null;
  useEffect(() => {
    if (start) clubName.value = start.clubName;
  }, [start]);
  return (
    <Page
      title={`Will it trip? · ${start?.night.name ?? session}`}
      heading="Will it trip?"
      class="plan-page load-page"
      intro={<Where codes={codes} start={start} />}
    >
      <Loaded load={load} what="Adding up the currents">
        {(value, again) => <LoadView key={path} codes={codes} start={value} again={again} />}
      </Loaded>
    </Page>
  );
}

/** Which night and slot, and the way to others. */
function Where({ codes, start }: { readonly codes: SlotCodes; readonly start: Start | null }) {
  const { club, session, slot } = codes;
  const here = start?.night.slots.find(({ code }) => code === slot);
  const dates = start && here ? slotDates(here, start.timeZone) : null;
  return (
    <div class="which-slot">
      <nav class="crumbs" aria-label="Where you are">
        <a href={nightsAddress(club)}>Nights</a> <span aria-hidden="true">›</span>{" "}
        <a href={planAddress(club, session, slot)}>{start?.night.name ?? session}</a>{" "}
        <span aria-hidden="true">›</span> <span aria-current="page">Currents</span>
      </nav>
      {dates && (
        <p class="no-break">
          {dates.weekday} {dates.date}, {dates.hours}
        </p>
      )}
      {start && start.night.slots.length > 1 && (
        <nav aria-label="Slots of this night">
          <ul class="slot-tabs">
            {start.night.slots.map(({ code, name }) => (
              <li key={code}>
                <a href={loadAddress(club, session, code)} aria-current={code === slot ? "page" : undefined}>
                  {name}
                </a>
              </li>
            ))}
          </ul>
        </nav>
      )}
    </div>
  );
}
