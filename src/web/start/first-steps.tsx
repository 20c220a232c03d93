import type { ComponentChildren } from "preact";
import type { Club } from "../../../shared/clubs.ts";
import { API_REFERENCE, membersAddress, newNightAddress } from "../addresses.ts";
import { type Beginnings, readBeginnings } from "../api/start.ts";
import { useLoad } from "../api/use-load.ts";
import { useMay } from "../api/use-me.ts";
import { Loaded } from "../shell/loaded.tsx";
import { VerdictMark } from "../shell/marks.tsx";
import { BringDocument } from "./bring-document.tsx";

/** A new club's first page: the steps to its first checked night, and how far it has come. */
export function FirstSteps({ club }: { readonly club: Club }) {
  const mayBring = useMay(club.code, "keep-club");
  const load = useLoad(club.code, (signal) => readBeginnings(club.code, signal));
  return (
    <Loaded load={load} what="Looking how far the club has come">
      {(beginnings, again) =>
        mayBring ? (
          <Steps club={club} beginnings={beginnings} again={again} />
        ) : (
          <div class="empty">
            <p>{club.name} has no night yet. Its secretary makes the first one; it then stands here.</p>
          </div>
        )
      }
    </Loaded>
  );
}

interface StepsProps {
  readonly club: Club;
  readonly beginnings: Beginnings;
  readonly again: () => void;
}

function Steps({ club, beginnings: { hasRailway, hasTimetable }, again }: StepsProps) {
  const isReady = hasRailway && hasTimetable;
  return (
    <>
      <p class="lead">{club.name} has no night yet. Three steps lead to the first checked one.</p>
      <ol class="first-steps">
        <Step n={1} heading="The railway and its stock" isDone={hasRailway}>
          <p>
            Sections, links, feeds and wiring, and the locomotives' currents, as one document of the club.{" "}
            <a href={API_REFERENCE}>The API reference</a> has an example of each part.
          </p>
          {!isReady && <BringDocument club={club.code} onBrought={again} />}
        </Step>
        <Step n={2} heading="A timetable" isDone={hasTimetable}>
          <p>
            Each train with its path over the sections and its times by the layout clock. It may come in the
            same document.
          </p>
        </Step>
        <Step n={3} heading="A night" isDone={false}>
          <p>Date, hours, clock ratio, timetable, and which areas run analog and which digital.</p>
          {isReady ? (
            <p>
              <a class="button" href={newNightAddress(club.code)}>
                A new night
              </a>
            </p>
          ) : (
            <p class="quiet">It can be made once there is a railway and a timetable.</p>
          )}
        </Step>
      </ol>
      <p>
        Meanwhile, <a href={membersAddress(club.code)}>add the members</a> and invite them.
      </p>
    </>
  );
}

interface StepProps {
  readonly n: number;
  readonly heading: string;
  readonly isDone: boolean;
  readonly children: ComponentChildren;
}

function Step({ n, heading, isDone, children }: StepProps) {
  return (
    <li class={`first-step ${isDone ? "done" : ""}`}>
      <span class="step-number" aria-hidden="true">
        {isDone ? <VerdictMark verdict="runs" size={28} /> : n}
      </span>
      <div>
        <h2>
          {heading}
          {isDone && <span class="quiet"> done</span>}
        </h2>
        {children}
      </div>
    </li>
  );
}
