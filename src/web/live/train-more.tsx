import { useState } from "preact/hooks";
import type { NightTrain } from "../../../shared/night.ts";
import { reportTrain, useBoard } from "./board.ts";
import { Replacement } from "./replacement.tsx";

const STEPS_MIN = [2, 5, 10] as const;

/** What seldom happens to a train: it is late, it is not run, its locomotive fails. */
export function TrainMore({ train }: { readonly train: NightTrain }) {
  const board = useBoard();
  const [failed, setFailed] = useState<string | null>(null);
  const isDue = train.state === "waiting" || train.state === "running";
  const code = train.train;
  return (
    <>
      <div class="more-row">
        {isDue && <Lateness train={train} />}
        {train.state === "waiting" && (
          <button
            type="button"
            class="big-button"
            onClick={() => board.act(reportTrain(train, { state: "left out" }, `Train ${code} is left out.`))}
          >
            Leave out
          </button>
        )}
        {train.state === "arrived" && (
          <button
            type="button"
            class="big-button"
            onClick={() => board.act(reportTrain(train, { state: "running" }, `Train ${code} is under way.`))}
          >
            Not there yet
          </button>
        )}
        {isDue &&
          train.locomotives.map((locomotive) => (
            <button
              key={locomotive.code}
              type="button"
              class="big-button"
              aria-expanded={failed === locomotive.code}
              onClick={() => setFailed(failed === locomotive.code ? null : locomotive.code)}
            >
              {locomotive.code} failed
            </button>
          ))}
      </div>
      {failed !== null && <Replacement key={failed} train={train} locomotive={failed} />}
    </>
  );
}

function Lateness({ train }: { readonly train: NightTrain }) {
  const board = useBoard();
  const say = (minutes: number | null) =>
    board.act(
      reportTrain(
        train,
        { lateMinutes: minutes },
        minutes === null
          ? `Train ${train.train} is as late as the clock finds it.`
          : `Train ${train.train} is ${minutes} min late.`,
      ),
    );
  return (
    <fieldset class="lateness">
      <legend>Layout minutes late</legend>
      {STEPS_MIN.map((step) => (
        <button
          key={step}
          type="button"
          class="big-button"
          onClick={() => say((train.statedLateMinutes ?? train.lateMinutes) + step)}
        >
          +{step}
        </button>
      ))}
      {train.statedLateMinutes !== null && (
        <button type="button" class="big-button" onClick={() => say(null)}>
          By the clock
        </button>
      )}
    </fieldset>
  );
}
