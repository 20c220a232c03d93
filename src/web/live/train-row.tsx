import { useState } from "preact/hooks";
import type { NightLocomotive, NightTrain } from "../../../shared/night.ts";
import { endText } from "../nights/end-text.ts";
import { type LiveBoard, reportTrain, useBoard } from "./board.ts";
import { farOff, realMinutesTo } from "./reading.ts";
import { TrainMore } from "./train-more.tsx";

/** One train: when, from where to where, who with what, and the button for what it does next. */
export function TrainRow({ train }: { readonly train: NightTrain }) {
  const board = useBoard();
  const [isOpen, setOpen] = useState(false);
  const id = `more-${train.slot}-${train.train}`;
  return (
    <li class={`train-row train-${train.state.replace(" ", "-")}`}>
      <div class="train-when">
        <When train={train} board={board} />
      </div>
      <div class="train-what">
        <p>
          <strong>{train.train}</strong> {train.name} <Late minutes={train.lateMinutes} />
        </p>
        <p>
          {endText(train.from)} → {endText(train.to)}
        </p>
        <p class="train-with">
          <Driver train={train} />
          {train.handset !== null && <span>handset {train.handset}</span>}
          {train.locomotives.map((locomotive) => (
            <Locomotive key={locomotive.code} locomotive={locomotive} />
          ))}
        </p>
        {train.note && <p class="quiet">{train.note}</p>}
      </div>
      {board.mayRun && (
        <div class="train-do">
          <NextStep train={train} board={board} />
          <button
            type="button"
            class="big-button"
            aria-expanded={isOpen}
            aria-controls={id}
            aria-label={`More for train ${train.train}`}
            onClick={() => setOpen(!isOpen)}
          >
            {isOpen ? "Less" : "More"}
          </button>
        </div>
      )}
      <div id={id} class="train-more" hidden={!isOpen}>
        {isOpen && <TrainMore train={train} />}
      </div>
    </li>
  );
}

/** The reading to look out for: the arrival of a train under way, the departure of one that waits. */
function When({ train, board }: { readonly train: NightTrain; readonly board: LiveBoard }) {
  const end = train.state === "running" ? train.to : train.from;
  const { clock } = board.night;
  const isDue = train.state === "running" || train.state === "waiting";
  return (
    <>
      <b>{end.expectedLayout}</b>
      {end.expectedLayout !== end.layout && (
        <s>
          <span class="visually-hidden">by the timetable </span>
          {end.layout}
        </s>
      )}
      {isDue && clock.state !== "not started" && (
        <span>{farOff(realMinutesTo(end.expectedLayout, board.now.value, clock.clockRatio))}</span>
      )}
      {train.state === "left out" && <span>left out</span>}
      {train.state === "arrived" && <span>arrived {train.arrivedLayout}</span>}
    </>
  );
}

function Late({ minutes }: { readonly minutes: number }) {
  if (minutes === 0) return null;
  return <span class="late">{minutes} min late</span>;
}

function Driver({ train: { driver, state } }: { readonly train: NightTrain }) {
  if (driver) return <span>{driver.name}</span>;
  return state === "waiting" || state === "running" ? <span class="missing">No driver</span> : null;
}

function Locomotive({ locomotive }: { readonly locomotive: NightLocomotive }) {
  const { code, address, failed, replaces } = locomotive;
  return (
    <span class={failed ? "missing" : ""}>
      {code}
      {address && ` · address ${address.number}`}
      {failed && " failed"}
      {replaces !== null && ` for ${replaces}`}
    </span>
  );
}

const STEPS = {
  waiting: ["running", "Departed"],
  running: ["arrived", "Arrived"],
  arrived: null,
  "left out": ["waiting", "Run it after all"],
} as const;

function NextStep({ train, board }: { readonly train: NightTrain; readonly board: LiveBoard }) {
  const step = STEPS[train.state];
  if (step === null) return null;
  const [state, word] = step;
  const done = `Train ${train.train}: ${word.toLowerCase()}.`;
  return (
    <button
      type="button"
      class="big-button"
      aria-label={`${word}: train ${train.train}`}
      onClick={() => board.act(reportTrain(train, { state }, done))}
    >
      {word}
    </button>
  );
}
