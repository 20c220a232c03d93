import { Refusal } from "../../lib/refusal.ts";

export const noSlotHere = (session: string, slot: string) =>
  new Refusal("not-found", `There is no session ${session} with a slot ${slot} here.`);

/** A sheet of nothing would be taken for a schedule in which nothing is to be turned. */
export const noSchedule = (headline: string) => new Refusal("unprocessable", headline);
