import { useEffect } from "preact/hooks";
import { useLocation } from "preact-iso";
import type { Session } from "../../../shared/sessions.ts";
import type { WiringReport } from "../../../shared/wiring.ts";
import { railwayAddress, wiringAddress } from "../addresses.ts";
import { change } from "../api/ask.ts";
import { readClub, sessionPath } from "../api/service.ts";
import { useLoad } from "../api/use-load.ts";
import { listNights } from "../nights/night-records.ts";
import { clubName } from "../shell/club-name.ts";
import { Loaded } from "../shell/loaded.tsx";
import { Page } from "../shell/page.tsx";
import { SelectField } from "../shell/select-field.tsx";
import { DistrictPart } from "./district-part.tsx";

interface WiringPageProps {
  readonly club?: string;
}

/** A slot by its session and code. */
export interface SlotChoice {
  readonly key: string;
  readonly words: string;
  readonly startsAt: number;
  readonly endsAt: number;
}

async function readWiring(club: string, wanted: string | null, signal: AbortSignal) {
  const [record, nights] = await Promise.all([readClub(club, signal), listNights(club, signal)]);
  const choices = toChoices(nights);
  const chosen = choices.find(({ key }) => key === wanted) ?? nextOf(choices);
  if (chosen === undefined) return { record, choices, chosen: null, report: null };
  const [session = "", slot = ""] = chosen.key.split(" ");
  const path = `${sessionPath(club, session)}/slots/${encodeURIComponent(slot)}/wiring`;
  const report = (await change<WiringReport>("POST", path, { signal })).value;
  return { record, choices, chosen, report };
}

export const toChoices = (nights: readonly Session[]): SlotChoice[] =>
  nights
    .flatMap(({ code, name, slots }) =>
      slots.map((slot) => ({
        key: `${code} ${slot.code}`,
        words: `${name}, ${slot.name}`,
        startsAt: Date.parse(slot.startsAt),
        endsAt: Date.parse(slot.endsAt),
      })),
    )
    .sort((a, b) => a.startsAt - b.startsAt);

/** The next slot, or the last one there was. */
export const nextOf = (choices: readonly SlotChoice[]) =>
  choices.find(({ endsAt }) => endsAt > Date.now()) ?? choices.at(-1);

/** Whether the districts are wired for what their trains draw, and when each was tested. */
export function WiringPage({ club = "" }: WiringPageProps) {
  const { query, route } = useLocation();
  const wanted = query.slot ?? null;
  const load = useLoad(`${club} ${wanted}`, (signal) => readWiring(club, wanted, signal));
  const name = load.status === "ready" ? load.value.record.name : null;
  useEffect(() => {
    if (name) clubName.value = name;
  }, [name]);
  return (
    <Page title={`Wiring · ${name ?? club}`} heading="Can it be wired so?" class="wiring-page">
      <Loaded load={load} what="Reckoning the wires">
        {({ choices, chosen, report }, again) =>
          report === null || chosen === null ? (
            <p>
              Wires are reckoned at what a night's trains draw: book a night first. The districts themselves
              are on the <a href={railwayAddress(club, "districts")}>railway's page</a>.
            </p>
          ) : (
            <>
              <p class="headline railway-answer">{report.headline}</p>
              <div class="wiring-slot">
                <SelectField
                  label="At the peaks of"
                  value={chosen.key}
                  onValue={(key) => route(`${wiringAddress(club)}?slot=${encodeURIComponent(key)}`)}
                  options={choices.map(({ key, words }) => [key, words] as const)}
                />
              </div>
              <section class="cautions" aria-labelledby="cautions-heading">
                <h2 id="cautions-heading">Before anybody touches a wire</h2>
                <ul>
                  {report.cautions.map((caution) => (
                    <li key={caution}>{caution}</li>
                  ))}
                </ul>
              </section>
              {report.districts.map((district) => (
                <DistrictPart
                  key={district.code}
                  club={club}
                  district={district}
                  report={report}
                  again={again}
                />
              ))}
            </>
          )
        }
      </Loaded>
    </Page>
  );
}
