import type { SelectorSchedule } from "../../../shared/selector-schedule.ts";
import { count } from "../plan/figures.ts";
import { positionText } from "./turn-words.ts";

/** Each selector with its turns one after the other. */
export function SectionTable({ schedule }: { readonly schedule: SelectorSchedule }) {
  const { sections, moments } = schedule;
  const most = [...sections].sort((a, b) => b.turns - a.turns)[0];
  const turnsOf = (section: string) =>
    moments.flatMap(({ at, turns }) =>
      turns.filter((turn) => turn.section === section).map(({ to }) => ({ at, to })),
    );
  const heading = most
    ? `By section: ${most.code} is turned most, ${count(most.turns, "time")}`
    : "By section";
  return (
    <section aria-labelledby="by-section">
      <h2 id="by-section">{heading}</h2>
      <table class="panel-sections">
        <thead>
          <tr>
            <th scope="col">Section</th>
            <th scope="col" class="figure">
              Turns
            </th>
            <th scope="col">Turn to, at layout time</th>
          </tr>
        </thead>
        <tbody>
          {sections.map(({ code, name, turns }) => (
            <tr key={code}>
              <th scope="row">
                <b>{code}</b> <span class="quiet">{name}</span>
              </th>
              <td class="figure">{turns}</td>
              <td>
                {turnsOf(code).map(({ at, to }) => (
                  <span key={at} class="panel-step">
                    {at} <b>{positionText(to)}</b>
                  </span>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
