import { Refusal } from "../../lib/refusal.ts";

export const changedMeanwhile = (locomotive: string) =>
  new Refusal(
    "version-mismatch",
    `Locomotive ${locomotive} is not what it was when the correction was proposed: compare again.`,
  );
