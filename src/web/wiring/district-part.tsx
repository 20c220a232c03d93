import type { DistrictWiring, WireReport, WiringReport } from "../../../shared/wiring.ts";
import { railwayAddress } from "../addresses.ts";
import { useMay } from "../api/use-me.ts";
import { amps } from "../plan/figures.ts";
import { SeverityMark } from "../shell/marks.tsx";
import { TestForm } from "./test-form.tsx";

interface DistrictPartProps {
  readonly club: string;
  readonly district: DistrictWiring;
  readonly report: WiringReport;
  readonly again: () => void;
}

/** A district's wires against what they must do, its last short test, and the steps of the next. */
export function DistrictPart({ club, district, report, again }: DistrictPartProps) {
  const { code, name, sentence, isSound, wire, test, checklist } = district;
  const may = useMay(club, "keep-layout");
  return (
    <section class="district-wiring" aria-labelledby={`district-${code}`}>
      <h2 id={`district-${code}`}>
        {!isSound && <SeverityMark severity={isGrave(district) ? "stops" : "warns"} />} {sentence}
      </h2>
      {wire === null ? (
        <p>
          Write down its conductor and how long its run is{" "}
          <a href={`${railwayAddress(club, "districts")}?row=${encodeURIComponent(code)}`}>in its row</a>, and
          the figures appear here.
        </p>
      ) : (
        <Figures district={district} wire={wire} leastV={report.leastV} />
      )}
      <h3>Short test</h3>
      <p>
        {test === null
          ? "None is on record."
          : `${test.result === "passed" ? "Passed" : "Failed"} on ${test.testedOn}${test.testedAt ? ` at ${test.testedAt}` : ""}${test.by ? `, tested by ${test.by}` : ""}.`}
      </p>
      <details class="checklist">
        <summary>Steps of the test</summary>
        <ol>
          {checklist.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      </details>
      {may && <TestForm club={club} district={code} name={name} onRecorded={again} />}
    </section>
  );
}

const isGrave = ({ wire, test }: DistrictWiring) => wire?.faultFails === true || test?.result === "failed";

interface FiguresProps {
  readonly district: DistrictWiring;
  readonly wire: WireReport;
  readonly leastV: number;
}

function Figures({ district, wire, leastV }: FiguresProps) {
  const { peakMa, peakLayout, supplyVolts, supplyName, breakerMa, tripDelayMs, sourceOhm } = district;
  const rows: readonly (readonly [what: string, is: string, must: string, fails: boolean])[] = [
    [
      "Volts lost in the wires at the peak",
      `${wire.dropV.toFixed(2)} V`,
      `at most ${wire.dropLimitV.toFixed(2)} V`,
      wire.dropFails,
    ],
    [
      "Volts left at the far end",
      wire.farEndV > 0 ? `${wire.farEndV.toFixed(2)} V` : "none",
      `at least ${leastV} V`,
      wire.voltsFail,
    ],
    [
      "What a short at the far end brings",
      wire.faultMa === null ? "whatever the supply gives" : amps(wire.faultMa),
      `at least ${amps(wire.faultLimitMa)}`,
      wire.faultFails,
    ],
  ];
  return (
    <>
      <table class="wire-figures">
        <caption class="visually-hidden">Wires of {district.name} against what they must do</caption>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col" class="figure">
              Is
            </th>
            <th scope="col" class="figure">
              Must be
            </th>
            <th scope="col">So</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([what, is, must, fails]) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              <td class="figure">{is}</td>
              <td class="figure quiet">{must}</td>
              <td class={fails ? "wire-fails" : ""}>{fails ? "■ falls short" : "holds"}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        {(wire.lengthMm / 1_000).toFixed(1)} m of {wire.conductor}, {wire.loopOhm.toFixed(3)} Ω there and back
        at {wire.temperatureC} °C; it peaks at {amps(peakMa)} at {peakLayout}. {supplyName} gives{" "}
        {supplyVolts} V through {sourceOhm} Ω of its own; the breaker opens at {amps(breakerMa)} after{" "}
        {tripDelayMs} ms.
      </p>
      <p>
        {wire.thinnest === null
          ? "No conductor of the table would do over this length: shorten the run, or divide the district."
          : `The thinnest conductor that does all of it over this length is ${wire.thinnest}.`}
      </p>
    </>
  );
}
