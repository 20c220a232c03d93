import type { EstimateRow, Estimates } from "../../../shared/estimates.ts";
import { sayRead, sayUsed } from "./say-estimate.ts";

/** What checks reckon with, beside the roster: those read or able to run first, the rest behind a press. */
export function EstimatesTable({ estimates }: { readonly estimates: Estimates }) {
  const first = estimates.items.filter(({ state, readings }) => state === "running" || readings > 0);
  return (
    <section aria-labelledby="estimates-heading">
      <h2 id="estimates-heading">{estimates.headline}</h2>
      <Rows items={first} caption="What locomotives draw while they run, and whatever was read of them" />
      <details>
        <summary>Every locomotive in every state</summary>
        <Rows items={estimates.items} caption="What locomotives draw in every state" />
      </details>
    </section>
  );
}

function Rows({ items, caption }: { readonly items: readonly EstimateRow[]; readonly caption: string }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone is scrolled with the keyboard
    <section class="table-scroll" tabIndex={0} aria-label={caption}>
      <table class="wire-figures">
        <caption class="visually-hidden">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">Locomotive</th>
            <th scope="col">While</th>
            <th scope="col">Roster</th>
            <th scope="col">Readings</th>
            <th scope="col">Used</th>
          </tr>
        </thead>
        <tbody>
          {items.map((row) => (
            <tr key={`${row.state} ${row.locomotive}`}>
              <th scope="row">{row.name}</th>
              <td>{row.state}</td>
              <td>
                {row.rosterMa} mA, {row.source}
              </td>
              <td>{sayRead(row)}</td>
              <td>{sayUsed(row)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
