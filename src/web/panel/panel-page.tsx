import { useEffect } from "preact/hooks";
import { useLocation } from "preact-iso";
import { nightsAddress, panelAddress, planAddress } from "../addresses.ts";
import { useLoad } from "../api/use-load.ts";
import { slotDates } from "../nights/night-dates.ts";
import { clubName } from "../shell/club-name.ts";
import { Loaded } from "../shell/loaded.tsx";
import { Page } from "../shell/page.tsx";
import { type Panel, readPanel, type SlotCodes } from "./panel-service.ts";
import { PanelView } from "./panel-view.tsx";

/** When does who turn which selector of the analog panel? */
export function PanelPage({ club = "", session = "", slot = "" }: Partial<SlotCodes>) {
  const { path } = useLocation();
  const codes = { club, session, slot };
  const load = useLoad(path, (signal) => readPanel(codes, signal));
  const panel = load.status === "ready" ? load.value : null;
  useEffect(() => {
    if (panel) clubName.value = panel.clubName;
  }, [panel]);
  return (
    <Page
      title={`Selectors · ${panel?.night.name ?? session}`}
      heading="Selector schedule"
      class="plan-page panel-page"
      intro={<Where codes={codes} panel={panel} />}
    >
      <Loaded load={load} what="Making the schedule">
        {(value) => <PanelView key={path} codes={codes} panel={value} />}
      </Loaded>
    </Page>
  );
}

/** Which night and slot, and the way to others. */
function Where({ codes, panel }: { readonly codes: SlotCodes; readonly panel: Panel | null }) {
  const { club, session, slot } = codes;
  const here = panel?.night.slots.find(({ code }) => code === slot);
  const dates = panel && here ? slotDates(here, panel.timeZone) : null;
  return (
    <div class="which-slot">
      <nav class="crumbs" aria-label="Where you are">
        <a href={nightsAddress(club)}>Nights</a> <span aria-hidden="true">›</span>{" "}
        <a href={planAddress(club, session, slot)}>{panel?.night.name ?? session}</a>{" "}
        <span aria-hidden="true">›</span> <span aria-current="page">Panel</span>
      </nav>
      {dates && (
        <p class="no-break">
          {here?.name}, {dates.weekday} {dates.date}, {dates.hours}
        </p>
      )}
      {panel && panel.night.slots.length > 1 && (
        <nav aria-label="Slots of this night">
          <ul class="slot-tabs">
            {panel.night.slots.map(({ code, name }) => (
              <li key={code}>
                <a href={panelAddress(club, session, code)} aria-current={code === slot ? "page" : undefined}>
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
