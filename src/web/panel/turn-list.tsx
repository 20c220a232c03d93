import type { SelectorSchedule } from "../../../shared/selector-schedule.ts";
import type { Clocks } from "../charts/clocks.ts";
import { count } from "../plan/figures.ts";
import { leeway, positionText, purpose } from "./turn-words.ts";

type Moment = SelectorSchedule["moments"][number];

interface TurnListProps {
  readonly schedule: SelectorSchedule;
  readonly clocks: Clocks;
}

/** Every turn in order of time, to be ticked off at the panel. */
export function TurnList({ schedule, clocks }: TurnListProps) {
  const { moments } = schedule;
  const [first, last] = [moments[0], moments.at(-1)];
  return (
    <section aria-labelledby="by-time">
      <h2 id="by-time">
        By time: {count(moments.length, "moment")} from {first?.at} to {last?.at}
      </h2>
      <ol class="panel-moments">
        {moments.map((moment) => (
          <MomentItem key={moment.atMs} moment={moment} clocks={clocks} />
        ))}
      </ol>
    </section>
  );
}

function MomentItem({ moment, clocks }: { readonly moment: Moment; readonly clocks: Clocks }) {
  const { at, atMs, turns } = moment;
  return (
    <li class="panel-moment">
      <p class="panel-time">
        <strong>{at}</strong> <span class="quiet">room {clocks.roomText(atMs)}</span>
      </p>
      <ul>
        {turns.map((turn) => (
          <li key={turn.section}>
            <label class="panel-turn">
              <input type="checkbox" />
              <span class="panel-do">
                {turn.section} <span aria-hidden="true">→</span>
                <span class="visually-hidden">to</span> {positionText(turn.to)}
              </span>
              <span class="panel-why">
                {purpose(turn)}, {leeway(atMs, turn)}
              </span>
            </label>
          </li>
        ))}
      </ul>
    </li>
  );
}
