import { railwayAddress } from "../addresses.ts";

const STEPS = [
  ["areas", "Areas", "one is enough: a part of the railway that a night runs analog or digital as one"],
  ["places", "Places", "stations, junctions, yards"],
  [
    "command-systems",
    "Command systems",
    "the digital system that handsets belong to; none for an analog railway",
  ],
  ["supplies", "Supplies", "boosters, with their rating"],
  ["districts", "Power districts", "what lies behind one breaker"],
  ["sections", "Sections", "lengths of track, each with its area, place and district"],
  ["links", "Links", "which sections join"],
  ["controllers", "Controllers", "analog ones, with their outputs"],
  ["selectors", "Selectors", "which outputs each analog section can be turned to"],
] as const;

/** The order in which a railway is written down, each step a press away. */
export function FirstRecords({ club }: { readonly club: string }) {
  return (
    <section aria-labelledby="first-records">
      <h2 id="first-records">Write the railway down in this order</h2>
      <ol class="first-records">
        {STEPS.map(([table, words, what]) => (
          <li key={table}>
            <a href={railwayAddress(club, table)}>{words}</a>: {what}
          </li>
        ))}
      </ol>
    </section>
  );
}
