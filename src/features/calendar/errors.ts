import { Refusal } from "../../lib/refusal.ts";

export const noSession = (code: string) => new Refusal("not-found", `There is no session ${code} here.`);

/** What never was a calendar's address and what no longer is one look the same. */
export const noCalendar = () => new Refusal("not-found", "There is no calendar at this address.");

export const noAccount = () =>
  new Refusal("not-permitted", "Only somebody with an account has a calendar of their own.");
