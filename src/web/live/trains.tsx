import type { NightTrain } from "../../../shared/night.ts";
import { useBoard } from "./board.ts";
import { TrainRow } from "./train-row.tsx";

/** Departures shown at once: what a marshal keeps in mind. */
const SOON = 8;

/** The trains under way, the next to depart, and what is behind. */
export function Trains() {
  const { night } = useBoard();
  const running = night.trains.filter(({ state }) => state === "running");
  const next = night.next.flatMap(({ slot, train }) => find(night.trains, slot, train));
  const isNext = new Set(next);
  const rest = night.trains.filter(
    (train) => train.slot === night.clock.slot && train.state !== "running" && !isNext.has(train),
  );
  return (
    <section aria-labelledby="trains-heading" class="live-trains">
      {running.length > 0 && (
        <>
          <h2>On the line</h2>
          <Rows trains={running} />
        </>
      )}
      <h2 id="trains-heading">Next departures</h2>
      {next.length === 0 ? (
        <p class="quiet">No train is still to depart.</p>
      ) : (
        <Rows trains={next.slice(0, SOON)} />
      )}
      {next.length > SOON && (
        <details class="fold">
          <summary>{next.length - SOON} later</summary>
          <Rows trains={next.slice(SOON)} />
        </details>
      )}
      {rest.length > 0 && (
        <details class="fold">
          <summary>{rest.length} arrived or left out</summary>
          <Rows trains={rest} />
        </details>
      )}
    </section>
  );
}

function find(trains: readonly NightTrain[], slot: string, code: string): NightTrain[] {
  const train = trains.find((t) => t.slot === slot && t.train === code);
  return train ? [train] : [];
}

function Rows({ trains }: { readonly trains: readonly NightTrain[] }) {
  return (
    <ol class="train-rows">
      {trains.map((train) => (
        <TrainRow key={`${train.slot} ${train.train}`} train={train} />
      ))}
    </ol>
  );
}
