import type { Hindrance } from "../../../shared/claims.ts";
import { Refusal } from "../../lib/refusal.ts";
import type { Job, JobKind } from "./plan.ts";
import { nameOfJob } from "./sentences.ts";

export const noSession = (code: string) => new Refusal("not-found", `There is no session ${code} here.`);

export const noSlot = (session: string, slot: string) =>
  new Refusal("not-found", `Session ${session} has no slot ${slot}.`);

export const noClaim = () =>
  new Refusal("not-found", "There is no such claim in this slot, or not any more.");

export const noSwap = () => new Refusal("not-found", "There is no such offer here, or not any more.");

export const notWaiting = (job: Job) =>
  new Refusal("not-found", `The member does not wait for ${nameOfJob(job)}.`);

export const hindered = ({ code, sentence }: Hindrance) => new Refusal(code, sentence);

const unknown = (pointer: string, detail: string) =>
  new Refusal("unprocessable", detail, [{ pointer, detail }]);

export const noJob = (kind: JobKind, slot: string, code: string) =>
  unknown(
    `/body/${kind}`,
    kind === "train"
      ? `No train ${code} departs in slot ${slot}: name one of its board.`
      : `Slot ${slot} has no duty ${code}: name one of its board.`,
  );

export const noMember = (code: string) =>
  unknown("/body/member", `There is no member ${code} here: name one that there is.`);

export const nobody = () =>
  unknown("/body/member", "Name the member: whoever asks is in no list of members.");

export const forOthers = () =>
  new Refusal("not-permitted", "Members act for themselves; doing it for others takes the permission book.");

export const notYours = () => new Refusal("not-permitted", "It is somebody else's.");

export const lastAdult = (names: readonly string[], slot: string) =>
  new Refusal("last-adult", `${names.join(" and ")}, a junior, would be in slot ${slot} without an adult.`);

export const alreadySo = (sentence: string) => new Refusal("already-done", sentence);

export const ownSwap = () => unknown("/body/wants", "Both claims are yours: name one of another member.");

export const notInSwap = (pointer: string) =>
  unknown(pointer, "There is no such claim on this night: read the board again.");
