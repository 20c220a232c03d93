import { useState } from "preact/hooks";
import { Field, fieldText } from "../nights/field.tsx";
import { type LiveBoard, useBoard } from "./board.ts";
import { faceOf } from "./reading.ts";

const STATES = { "not started": "Not started", running: "Running", paused: "Paused" } as const;

/** The layout clock with large figures, and the button that starts and pauses it. */
export function ClockPanel() {
  const board = useBoard();
  const { clock, slots } = board.night;
  const slot = slots.find(({ code }) => code === clock.slot);
  return (
    <section class={`clock clock-${clock.state.replace(" ", "-")}`} aria-labelledby="clock-heading">
      <h2 id="clock-heading">Layout clock{slots.length > 1 && slot ? `, ${slot.name}` : ""}</h2>
      <Face board={board} />
      <p class="clock-facts">
        <strong>{STATES[clock.state]}</strong>
        <span>{clock.clockRatio} times as fast</span>
      </p>
      {board.mayRun && (
        <>
          <p class="clock-buttons">
            <StartOrPause board={board} />
            <NextSlot board={board} />
          </p>
          <Correct board={board} />
        </>
      )}
    </section>
  );
}

function Face({ board }: { readonly board: LiveBoard }) {
  const { minutes, seconds } = faceOf(board.now.value);
  return (
    <p class="clock-face" role="timer" aria-label="Layout clock">
      {minutes}
      <small>{seconds}</small>
    </p>
  );
}

const clockVersion = ({ night: { clock } }: LiveBoard) => ({
  version: (night: LiveBoard["night"]) =>
    night.clock.slot === clock.slot ? night.clock.version : clock.version,
});

function StartOrPause({ board }: { readonly board: LiveBoard }) {
  const { clock } = board.night;
  const isRunning = clock.state === "running";
  const press = () =>
    board.act({
      path: "clock",
      ...clockVersion(board),
      body: { slot: clock.slot, run: isRunning ? "pause" : "start" },
      done: isRunning ? "The layout clock is paused." : "The layout clock runs.",
    });
  return (
    <button type="button" class="clock-button main-button" onClick={press}>
      {isRunning ? "Pause" : "Start"}
    </button>
  );
}

/** The slot after this one, once there is one to go on to. */
function NextSlot({ board }: { readonly board: LiveBoard }) {
  const { clock, slots } = board.night;
  const next = slots[slots.findIndex(({ code }) => code === clock.slot) + 1];
  if (!next || clock.state !== "paused") return null;
  const press = () =>
    board.act({
      path: "clock",
      ...clockVersion(board),
      body: { slot: next.code, run: "start" },
      done: `The layout clock of ${next.name} runs.`,
    });
  return (
    <button type="button" class="clock-button big-button" onClick={press}>
      Start {next.name} instead
    </button>
  );
}

function Correct({ board }: { readonly board: LiveBoard }) {
  const [layout, setLayout] = useState("");
  const [note, setNote] = useState("");
  const submit = (event: Event) => {
    event.preventDefault();
    board.act({
      path: "clock",
      ...clockVersion(board),
      body: { slot: board.night.clock.slot, run: "set", layout, note },
      done: `The layout clock was set to ${layout}.`,
    });
    setLayout("");
    setNote("");
  };
  return (
    <details class="fold">
      <summary>Correct the clock</summary>
      <form class="live-form" onSubmit={submit}>
        <Field label="Shows now">
          <input
            value={layout}
            onInput={(event) => setLayout(fieldText(event))}
            required
            pattern="\d{1,2}:[0-5]\d(:[0-5]\d)?"
            placeholder="10:30"
            title="As 10:30"
            size={7}
          />
        </Field>
        <Field label="Why" class="grows">
          <input value={note} onInput={(event) => setNote(fieldText(event))} required maxLength={200} />
        </Field>
        <button type="submit" class="big-button">
          Set it
        </button>
      </form>
    </details>
  );
}
