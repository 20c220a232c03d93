import type { BookingState } from "../../../shared/booking.ts";
import { Refusal } from "../../lib/refusal.ts";
import { listed } from "./wording.ts";

export const noSession = (code: string) => new Refusal("not-found", `There is no session ${code} here.`);

export const noTrain = (slot: string, train: string) =>
  new Refusal("not-found", `No train ${train} departs in slot ${slot}.`);

/** The body names something that the club does not have. */
export const unknownIn = (field: string, kind: string, code: string) => {
  const detail = `There is no ${kind} ${code} here: name one that there is.`;
  return new Refusal("unprocessable", detail, [{ pointer: `/body/${field}`, detail }]);
};

export const notNow = (deed: string, booking: BookingState, at: readonly BookingState[]) =>
  new Refusal(
    "night-not-running",
    `The night is ${booking}: ${deed} takes one that is ${at.length > 1 ? `${listed(at.slice(0, -1))} or ${at.at(-1)}` : at[0]}.`,
  );

export const alreadySo = (sentence: string) => new Refusal("already-done", sentence);

export const handsetNotThere = (sentence: string) => new Refusal("handset-out", sentence);

export const unsuitable = (code: string, reasons: readonly string[]) =>
  new Refusal("locomotive-unsuitable", `${code} cannot stand in. ${reasons.join(" ")}`);

export const notInTrain = (locomotive: string, train: string, has: readonly string[]) => {
  const detail = `Train ${train} does not have ${locomotive} tonight: it has ${listed(has) || "none"}.`;
  return new Refusal("unprocessable", detail, [{ pointer: "/body/locomotive", detail }]);
};

export const notFailed = (locomotive: string, train: string) => {
  const detail = `${locomotive} did not fail in train ${train}.`;
  return new Refusal("unprocessable", detail, [{ pointer: "/body/locomotive", detail }]);
};

export const inTheFuture = (at: string) => {
  const detail = `${at} has not come yet: say when the breaker opened, or leave it out for now.`;
  return new Refusal("unprocessable", detail, [{ pointer: "/body/at", detail }]);
};
