import { BOOKING_MOVES, type BookingState } from "../../../shared/booking.ts";
import { Refusal } from "../../lib/refusal.ts";

export const noSession = (code: string) => new Refusal("not-found", `There is no session ${code} here.`);

export const noSlot = (session: string, slot: string) =>
  new Refusal("not-found", `There is no session ${session} with a slot ${slot} here.`);

export const notFromHere = (from: BookingState, to: BookingState) =>
  new Refusal(
    "not-from-here",
    from === to
      ? `The night is ${to} already.`
      : `A night that is ${from} cannot become ${to}, only ${BOOKING_MOVES[from].join(" or ")}.`,
  );

export const moveNotYours = (to: BookingState) =>
  new Refusal("not-permitted", `Making a night ${to} takes a role with the permission book.`);

export const oneFault = (pointer: string, detail: string) =>
  new Refusal("unprocessable", detail, [{ pointer, detail }]);

export const nightStopped = (sentences: readonly { readonly slot: string; readonly sentence: string }[]) => {
  const [first] = sentences;
  const count = sentences.length === 1 ? "One thing stops" : `${sentences.length} things stop`;
  return new Refusal(
    "night-stopped",
    `${count} this night${first === undefined ? "." : `, first: ${first.sentence}`}`,
    sentences
      .slice(0, MOST_FAULTS)
      .map(({ slot, sentence }) => ({ pointer: `/slots/${slot}`, detail: sentence })),
  );
};

export const nightUnfit = (slot: string, sentence: string) =>
  new Refusal("night-stopped", sentence, [{ pointer: `/slots/${slot}`, detail: sentence }]);

export const claimsLeft = (count: number) =>
  new Refusal(
    "booking-holds",
    `${count === 1 ? "One claim is" : `${count} claims are`} made already, and a draft has none.`,
  );

export const lastAdult = ({ slot, name }: { readonly slot: string; readonly name: string }) =>
  new Refusal("last-adult", `${name}, a junior, would be in slot ${slot} without an adult.`);

export const isDraft = (timetable: string, version: number) =>
  `Version ${version} of timetable ${timetable} is a draft: issue it, so that its trains stay as members claim them.`;

export const isUnfit = (detail: string) => `It cannot be checked as it is stored. ${detail}`;

export const noMember = (code: string) => `There is no member ${code} here: name one that there is.`;

export const WHO_COMES = "Name the member: whoever asks is in no list of members.";
export const OUTSIDE_SLOT = "The duty must lie within its slot: write a time between its start and its end.";
export const ENDS_BEFORE_START = "The duty ends before it has begun: write a later end, or an earlier start.";

/** What a person can take in. */
const MOST_FAULTS = 50;
