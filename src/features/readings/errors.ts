import { Refusal } from "../../lib/refusal.ts";

export const changedMeanwhile = (locomotive: string) =>
  new Refusal(
    "version-mismatch",
    `Locomotive ${locomotive} is not what it was when the correction was proposed: compare again.`,
  );

export const IN_NO_SLOT = "Name the slot in which it was read: with none, it is compared with nothing.";
