import type { BothWays } from "../../../shared/costing.ts";
import { amps, count, listed } from "../plan/figures.ts";

/** Both costs side by side, what each asks of which section, how far the equipment goes, and what was assumed. */
export function Costs({ costs }: { readonly costs: BothWays }) {
  const { analog, digital, mostTrains, assumptions } = costs;
  return (
    <>
      <section aria-labelledby="side-by-side">
        <h2 id="side-by-side">Side by side</h2>
        <div class="both-ways">
          <table class="wire-figures">
            <caption>All-analog</caption>
            <tbody>
              <Line what="Controller outputs" is={String(analog.outputs)} />
              <Line
                what="Sections to cut"
                is={
                  analog.divide.length === 0
                    ? "none"
                    : listed(analog.divide.map(({ section, parts }) => `${section} into ${parts}`))
                }
              />
              <Line
                what="Selector turns"
                is={
                  analog.turns === null
                    ? "known once the sections are cut"
                    : `${analog.turns.made}, ${analog.turns.anHour} an hour${analog.turns.made === analog.turns.atLeast ? "; fewer would not do" : ""}`
                }
              />
              <Line what="Most from one output" is={amps(analog.peakOutputMa)} />
              <Line
                what="Most from all together"
                is={`${amps(analog.peakTogetherMa)}${besides(analog.accessoriesMa)}`}
              />
              <Line
                what="Locomotives that may not"
                is={analog.unfit.length === 0 ? "none" : listed(analog.unfit)}
              />
            </tbody>
          </table>
          <table class="wire-figures">
            <caption>All-digital</caption>
            <tbody>
              <Line
                what="Handsets"
                is={`${digital.handsetsWithSpares}, ${digital.handsets} of them in use at once`}
              />
              <Line
                what="Decoders to fit"
                is={digital.decoders.length === 0 ? "none" : listed(digital.decoders)}
              />
              <Line
                what="All that is drawn at once"
                is={`${amps(digital.peakMa + digital.accessoriesMa)}${besides(digital.accessoriesMa)}`}
              />
              <Line
                what={`Districts of ${amps(digital.breakerMa)}`}
                is={`${digital.districts.length}${bound(digital, digital.leastDistricts, "district")}`}
              />
              <Line
                what={`Boosters of ${amps(digital.ratingMa)}`}
                is={`${digital.supplies.length}${bound(digital, digital.leastSupplies, "booster")}`}
              />
              <Line
                what="Too much for one breaker"
                is={digital.tooMuch.length === 0 ? "nothing" : listed(digital.tooMuch)}
              />
            </tbody>
          </table>
        </div>
      </section>
      <section aria-labelledby="how-far">
        <h2 id="how-far">{mostTrains.sentence}</h2>
        <table class="wire-figures">
          <caption class="visually-hidden">How far each part of the equipment goes</caption>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col" class="figure">
                Taken at once
              </th>
              <th scope="col" class="figure">
                There is
              </th>
              <th scope="col" class="figure">
                Trains at once
              </th>
            </tr>
          </thead>
          <tbody>
            {mostTrains.stretches.map(({ kind, name, used, has, trains }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td class="figure">{figure(kind, used)}</td>
                <td class="figure">{figure(kind, has)}</td>
                <td class="figure">{trains}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <section aria-labelledby="reach">
        <h2 id="reach">What would lie where</h2>
        <details>
          <summary>What each analog output feeds</summary>
          <ol>
            {analog.reach.map((sections, at) => (
              <li key={`${at} ${sections.join()}`}>{sections.join(", ") || "nothing"}</li>
            ))}
          </ol>
        </details>
        <details>
          <summary>Which sections each digital district has</summary>
          <ol>
            {digital.districts.map(({ sections, peakMa }) => (
              <li key={sections.join()}>
                {sections.join(", ")}: {amps(peakMa)} at the most
              </li>
            ))}
          </ol>
        </details>
      </section>
      <section aria-labelledby="assumed">
        <h2 id="assumed">What was assumed</h2>
        <ul>
          {assumptions.map((assumption) => (
            <li key={assumption}>{assumption}</li>
          ))}
        </ul>
      </section>
    </>
  );
}

const besides = (accessoriesMa: number) =>
  accessoriesMa > 0 ? `, ${amps(accessoriesMa)} of it for accessories` : "";

/** Where a section is too much for any breaker, the peak is not held at all, and the bound of those that do means nothing. */
const bound = ({ tooMuch }: BothWays["digital"], least: number, noun: string) =>
  tooMuch.length > 0 ? ", once what is too much is cut" : `; ${count(least, noun)} could not be beaten`;

function Line({ what, is }: { readonly what: string; readonly is: string }) {
  return (
    <tr>
      <th scope="row">{what}</th>
      <td>{is}</td>
    </tr>
  );
}

type Kind = BothWays["mostTrains"]["stretches"][number]["kind"];

const CURRENTS: ReadonlySet<Kind> = new Set(["output", "transformer", "district", "supply"] as const);

const figure = (kind: Kind, value: number) => (CURRENTS.has(kind) ? amps(value) : String(Math.round(value)));
