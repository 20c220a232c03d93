import { LIMITS } from "../../../shared/limits.ts";
import { Refusal } from "../../lib/refusal.ts";
import type { PlanFault } from "./references.ts";

export const noSlot = ({ club, session, slot }: { club: string; session: string; slot: string }) =>
  new Refusal("not-found", `Club ${club} has no session ${session} with a slot ${slot}.`);

export const tooManyTrains = (count: number) =>
  new Refusal("too-many-trains", `The plan has ${count} trains; one check takes ${LIMITS.trains}.`, [
    { pointer: "/body/trains", detail: `Must have ${LIMITS.trains} trains or fewer.` },
  ]);

export const tooLongPaths = (count: number) =>
  new Refusal(
    "too-many-trains",
    `The paths of all trains have ${count} sections together; one check takes ${LIMITS.checkedPathEntries}.`,
    [
      {
        pointer: "/body/trains",
        detail: `Must have paths of ${LIMITS.checkedPathEntries} sections or fewer together: leave trains out.`,
      },
    ],
  );

/** A plan that reads well but does not fit together. `inBody`: it came with the request, so the places are in its body. */
export function misfit(faults: readonly PlanFault[], inBody: boolean): Refusal {
  const [first] = faults;
  const count = faults.length === 1 ? "One thing does" : `${faults.length} things do`;
  const shown = faults.slice(0, MOST_FAULTS);
  return new Refusal(
    "unprocessable",
    `${count} not fit together in the plan${first === undefined ? "" : `, first: ${first.detail}`}`,
    inBody ? shown.map(({ pointer, detail }) => ({ pointer: `/body${pointer}`, detail })) : shown,
  );
}

/** What a person can take in. */
const MOST_FAULTS = 50;
