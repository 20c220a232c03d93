import { useEffect } from "preact/hooks";
import { useLocation } from "preact-iso";
import type { BothWays } from "../../../shared/costing.ts";
import { bothWaysAddress } from "../addresses.ts";
import { change } from "../api/ask.ts";
import { readClub, sessionPath } from "../api/service.ts";
import { useLoad } from "../api/use-load.ts";
import { listNights } from "../nights/night-records.ts";
import { clubName } from "../shell/club-name.ts";
import { Loaded } from "../shell/loaded.tsx";
import { Page } from "../shell/page.tsx";
import { SelectField } from "../shell/select-field.tsx";
import { nextOf, toChoices } from "../wiring/wiring-page.tsx";
import { Costs } from "./costs.tsx";

async function readCosts(club: string, wanted: string | null, signal: AbortSignal) {
  const [record, nights] = await Promise.all([readClub(club, signal), listNights(club, signal)]);
  const choices = toChoices(nights);
  const chosen = choices.find(({ key }) => key === wanted) ?? nextOf(choices);
  if (chosen === undefined) return { record, choices, chosen: null, costs: null };
  const [session = "", slot = ""] = chosen.key.split(" ");
  const path = `${sessionPath(club, session)}/slots/${encodeURIComponent(slot)}/both-ways`;
  const costs = (await change<BothWays>("POST", path, { signal })).value;
  return { record, choices, chosen, costs };
}

/** Analog or digital: what a timetable would take either way, and how far the present equipment goes. */
export function BothWaysPage({ club = "" }: { readonly club?: string }) {
  const { query, route } = useLocation();
  const wanted = query.slot ?? null;
  const load = useLoad(`${club} ${wanted}`, (signal) => readCosts(club, wanted, signal));
  const name = load.status === "ready" ? load.value.record.name : null;
  useEffect(() => {
    if (name) clubName.value = name;
  }, [name]);
  return (
    <Page title={`Analog or digital · ${name ?? club}`} heading="Analog or digital?" class="both-ways-page">
      <Loaded load={load} what="Costing the timetable both ways">
        {({ choices, chosen, costs }) =>
          costs === null || chosen === null ? (
            <p>A timetable is costed as a night runs it: book a night first.</p>
          ) : (
            <>
              <p class="headline railway-answer">{costs.headline}</p>
              <div class="wiring-slot">
                <SelectField
                  label="The timetable of"
                  value={chosen.key}
                  onValue={(key) => route(`${bothWaysAddress(club)}?slot=${encodeURIComponent(key)}`)}
                  options={choices.map(({ key, words }) => [key, words] as const)}
                />
              </div>
              <Costs costs={costs} />
            </>
          )
        }
      </Loaded>
    </Page>
  );
}
