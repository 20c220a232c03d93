import type { Comparison } from "../../../shared/estimates.ts";
import { change } from "../api/ask.ts";
import { clubPath } from "../api/service.ts";
import { useMay } from "../api/use-me.ts";
import { Refused } from "../shell/refused.tsx";
import { useSubmit } from "../shell/use-submit.ts";

interface ComparisonPartProps {
  readonly club: string;
  readonly comparison: Comparison;
  readonly onAccepted: () => void;
}

/** A night's readings of districts beside the plan, and what they would correct. */
export function ComparisonPart({ club, comparison, onAccepted }: ComparisonPartProps) {
  const { headline, readings, corrections, withheld, leftAlone } = comparison;
  const may = useMay(club, "keep-roster");
  const accept = useSubmit(async () => {
    const body = {
      corrections: corrections.map(({ locomotive, state, newMa, version }) => ({
        ...{ locomotive, state, version },
        ma: newMa,
      })),
    };
    await change("POST", `${clubPath(club)}/accept-corrections`, { body });
    onAccepted();
  });
  return (
    <section aria-labelledby="comparison-heading">
      <h2 id="comparison-heading">{headline}</h2>
      {readings.length > 0 && (
        <table class="wire-figures">
          <caption class="visually-hidden">Readings of districts beside the plan</caption>
          <thead>
            <tr>
              <th scope="col">District, layout time</th>
              <th scope="col">Read</th>
              <th scope="col">Planned</th>
              <th scope="col">Off by</th>
            </tr>
          </thead>
          <tbody>
            {readings.map((one) => (
              <tr key={one.reading}>
                <th scope="row">
                  {one.district}, {one.atLayout}
                </th>
                <td>{one.readMa} mA</td>
                <td>{one.plannedMa} mA</td>
                <td>{one.differenceMa} mA</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {corrections.length > 0 && (
        <ul>
          {corrections.map(({ locomotive, state, oldMa, newMa, readings: many }) => (
            <li key={`${state} ${locomotive}`}>
              {locomotive} {state}: {oldMa} mA → {newMa} mA, from {many} {many === 1 ? "reading" : "readings"}
            </li>
          ))}
        </ul>
      )}
      {withheld.length > 0 && (
        <p>
          Not proposed, as the readings would come out no nearer while those they do not tell apart stay as
          they are:{" "}
          {withheld
            .map(({ locomotive, state, oldMa, newMa }) => `${locomotive} ${state}, ${oldMa} mA → ${newMa} mA`)
            .join("; ")}
          .
        </p>
      )}
      {leftAlone.length > 0 && (
        <p>
          Left as they are, as these readings do not tell them apart:{" "}
          {leftAlone.map(({ locomotive, state }) => `${locomotive} ${state}`).join(", ")}.
        </p>
      )}
      {may && corrections.length > 0 && (
        <form onSubmit={accept.submit} aria-label="Accept the corrections">
          <button type="submit">Write these figures into the roster</button>
          <Refused problem={accept.problem} besides={[]} />
        </form>
      )}
    </section>
  );
}
