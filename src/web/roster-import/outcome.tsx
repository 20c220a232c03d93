import type { MappedResult } from "../../../shared/mapped-import.ts";
import { rosterAddress } from "../addresses.ts";
import type { Problem } from "../api/problem.ts";

interface OutcomeProps {
  readonly club: string;
  readonly problem: Problem | null;
  readonly result: MappedResult | null;
}

/** What would be kept, or is, or which cells stand in the way. */
export function Outcome({ club, problem, result }: OutcomeProps) {
  return (
    <div role="status" class="outcome">
      {problem && (
        <>
          <p>
            <strong>
              {problem.faults.length > 0
                ? sayCells(problem.faults.length)
                : problem.detail || problem.happened}
            </strong>{" "}
            Nothing was kept.
          </p>
          <ul>
            {problem.faults.map(({ pointer, detail }) => (
              <li key={`${pointer} ${detail}`}>
                {placeOf(pointer)}: {detail}
              </li>
            ))}
          </ul>
        </>
      )}
      {result && (
        <>
          <p>
            <strong>{result.dryRun ? "This would be kept: " : "Kept: "}</strong>
            {result.counts
              .map(
                ({ kind, made, changed, unchanged }) =>
                  `${made} new ${kind}, ${changed} changed, ${unchanged} as they were`,
              )
              .join("; ")}
            . {!result.dryRun && <a href={rosterAddress(club)}>See the roster</a>}
          </p>
          {result.kept.length > 0 && (
            <ul aria-label="Figures that stay as they are">
              {result.kept.map(({ locomotive, figure, sentence }) => (
                <li key={`${figure} ${locomotive}`}>{sentence}</li>
              ))}
            </ul>
          )}
          <section
            class="wide-frame"
            // biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls has to be reachable by keyboard
            tabIndex={0}
            aria-label="Locomotives as they are kept"
          >
            <table class="records">
              <caption class="visually-hidden">Locomotives as they are kept</caption>
              <thead>
                <tr>
                  <th scope="col">Code</th>
                  <th scope="col">Name</th>
                  <th scope="col" class="figure">
                    Length mm
                  </th>
                  <th scope="col" class="figure">
                    Running mA
                  </th>
                  <th scope="col" class="figure">
                    Standing mA
                  </th>
                  <th scope="col" class="figure">
                    Stalled mA
                  </th>
                  <th scope="col">Address</th>
                </tr>
              </thead>
              <tbody>
                {result.locomotives.map(({ code, name, lengthMm, running, standing, stall }) => (
                  <tr key={code}>
                    <th scope="row">{code}</th>
                    <td>{name}</td>
                    <td class="figure">{lengthMm}</td>
                    <td class="figure">{running.ma}</td>
                    <td class="figure">{standing.ma}</td>
                    <td class="figure">{stall.ma}</td>
                    <td>{addressOf(result, code)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
        </>
      )}
    </div>
  );
}

function addressOf({ decoders }: MappedResult, locomotive: string): string {
  const decoder = decoders.find((one) => one.locomotive === locomotive);
  return decoder ? `${decoder.address} ${decoder.addressKind}` : "not said";
}

const sayCells = (count: number) =>
  count === 1 ? "One cell stands in the way." : `${count} cells stand in the way.`;

/** `/body/3/Stall current A` as a spreadsheet says it. */
function placeOf(pointer: string | undefined): string {
  const [, , row, ...heading] = (pointer ?? "").split("/");
  // headings may hold what divides a pointer
  const column = heading.join("/");
  return column === "" ? `Row ${row ?? "?"}` : `Row ${row}, column ${column}`;
}
