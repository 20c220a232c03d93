import { useEffect } from "preact/hooks";
import { useLocation } from "preact-iso";
import type { CheckReport } from "../../../shared/check.ts";
import type { Comparison, Estimates } from "../../../shared/estimates.ts";
import { everyReadingAddress, readingsAddress } from "../addresses.ts";
import { change, read } from "../api/ask.ts";
import { clubPath, readClub, sessionPath } from "../api/service.ts";
import { useMay } from "../api/use-me.ts";
import { FirstAnswer } from "../nights/first-answer.tsx";
import { Lost } from "../nights/lost.tsx";
import { listNights } from "../nights/night-records.ts";
import { useCurrent } from "../nights/use-current.ts";
import { clubName } from "../shell/club-name.ts";
import { Page } from "../shell/page.tsx";
import { SelectField } from "../shell/select-field.tsx";
import { nextOf, toChoices } from "../wiring/wiring-page.tsx";
import { ComparisonPart } from "./comparison-part.tsx";
import { EstimatesTable } from "./estimates-table.tsx";
import { RecordForm } from "./record-form.tsx";
import { sayMeasured } from "./say-measured.ts";

async function readAll(club: string, wanted: string | null, signal: AbortSignal) {
  const [record, nights, estimates] = await Promise.all([
    readClub(club, signal),
    listNights(club, signal),
    read<Estimates>(`${clubPath(club)}/estimates`, signal),
  ]);
  const choices = toChoices(nights);
  const chosen = choices.find(({ key }) => key === wanted) ?? nextOf(choices);
  if (chosen === undefined) return { record, choices, estimates, chosen: null };
  const [session = "", slot = ""] = chosen.key.split(" ");
  const path = `${sessionPath(club, session)}/slots/${encodeURIComponent(slot)}`;
  const [check, comparison] = await Promise.all([
    change<CheckReport>("POST", `${path}/check`, { signal }),
    change<Comparison>("POST", `${path}/compare-readings`, { signal }),
  ]);
  const of = { ...chosen, session, slot, check: check.value, comparison: comparison.value };
  return { record, choices, estimates, chosen: of };
}

/** How much of what a night draws was measured; readings written down, compared and used. */
export function ReadingsPage({ club = "" }: { readonly club?: string }) {
  const { query, route } = useLocation();
  const may = useMay(club, "take-readings");
  const wanted = query.slot ?? null;
  // kept on show while it is asked again, so that the form keeps what was chosen in it
  const current = useCurrent(`${club} ${wanted}`, (signal) => readAll(club, wanted, signal));
  const name = current.value?.record.name ?? null;
  useEffect(() => {
    if (name) clubName.value = name;
  }, [name]);
  return (
    <Page
      title={`Readings · ${name ?? club}`}
      heading="How much of it is measured?"
      class="wiring-page readings-page"
    >
      <Lost isLost={false} problem={current.value ? current.problem : null} again={current.refresh} />
      <FirstAnswer current={current} what="Reading the meters">
        {({ choices, chosen, estimates }) => (
          <>
            {chosen && (
              <>
                <p class="headline railway-answer">{sayMeasured(chosen.words, chosen.check)}</p>
                <div class="wiring-slot">
                  <SelectField
                    label="Night"
                    value={chosen.key}
                    onValue={(key) => route(`${readingsAddress(club)}?slot=${encodeURIComponent(key)}`)}
                    options={choices.map(({ key, words }) => [key, words] as const)}
                  />
                </div>
              </>
            )}
            {may && (
              <RecordForm
                club={club}
                locomotives={estimates.items
                  .filter(({ state }) => state === "running")
                  .map(({ locomotive, name: called }) => [locomotive, called] as const)}
                districts={chosen?.check.districts.map(({ code, name: called }) => [code, called]) ?? []}
                night={chosen && { session: chosen.session, slot: chosen.slot }}
                onRecorded={current.refresh}
              />
            )}
            {chosen && (
              <ComparisonPart club={club} comparison={chosen.comparison} onAccepted={current.refresh} />
            )}
            <EstimatesTable estimates={estimates} />
            <p>
              <a href={everyReadingAddress(club)}>Every reading, to put one right or take it out</a>
            </p>
          </>
        )}
      </FirstAnswer>
    </Page>
  );
}
