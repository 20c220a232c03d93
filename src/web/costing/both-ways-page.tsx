import { useEffect } from "preact/hooks";
import { useLocation } from "preact-iso";
import { bothWaysAddress } from "../addresses.ts";
import { useLoad } from "../api/use-load.ts";
import { clubName } from "../shell/club-name.ts";
import { Loaded } from "../shell/loaded.tsx";
import { Page } from "../shell/page.tsx";
import { SelectField } from "../shell/select-field.tsx";
import { isWhole, readCosts, USUAL_RATIO } from "./costing-service.ts";
import { Costs } from "./costs.tsx";

const RATIOS = [1, 2, 3, 4, 5, 6, 8, 10, 12];

/** Analog or digital: what a timetable would take either way, and how far the present equipment goes. */
export function BothWaysPage({ club = "" }: { readonly club?: string }) {
  const { query, route } = useLocation();
  const wanted = query.of ?? null;
  const ratio = Number(query.ratio) || USUAL_RATIO;
  const load = useLoad(`${club} ${wanted} ${ratio}`, (signal) => readCosts(club, wanted, ratio, signal));
  const go = (of: string, by: number) =>
    route(`${bothWaysAddress(club)}?of=${encodeURIComponent(of)}${isWhole(of) ? `&ratio=${by}` : ""}`);
  const name = load.status === "ready" ? load.value.record.name : null;
  useEffect(() => {
    if (name) clubName.value = name;
  }, [name]);
  return (
    <Page title={`Analog or digital · ${name ?? club}`} heading="Analog or digital?" class="both-ways-page">
      <Loaded load={load} what="Costing the timetable both ways">
        {({ choices, chosen, costs }) =>
          costs === null || chosen === null ? (
            <p>There is no timetable yet, and so nothing to cost.</p>
          ) : (
            <>
              <p class="headline railway-answer">{costs.headline}</p>
              <div class="wiring-slot">
                <SelectField
                  label="The timetable of"
                  value={chosen.key}
                  onValue={(key) => go(key, ratio)}
                  options={choices.map(({ key, words }) => [key, words] as const)}
                />
                {isWhole(chosen.key) && (
                  <SelectField
                    label="Layout clock runs"
                    value={String(ratio)}
                    onValue={(by) => go(chosen.key, Number(by))}
                    options={[...new Set([...RATIOS, ratio])].map((by) => [String(by), `${by} : 1`] as const)}
                  />
                )}
              </div>
              <Costs costs={costs} />
            </>
          )
        }
      </Loaded>
    </Page>
  );
}
