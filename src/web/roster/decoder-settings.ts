import type { Decoder } from "../../../shared/roster.ts";

/** A configuration variable and what to write into it. */
export interface Setting {
  readonly variable: string;
  readonly value: number;
  /** What it says. */
  readonly words: string;
}

/** CV29 bit 1: 28 or 128 speed steps; bit 2: runs on analog track too; bit 5: the long address counts. NMRA S-9.2.2. */
const STEPS = 2;
const ANALOG = 4;
const LONG = 32;

/** First value of CV17: its two highest bits are set in every long address, NMRA S-9.2.2. */
const LONG_BASE = 192;

/**
 * What a decoder's variables have to hold for its address, NMRA S-9.2.2: CV1 for a short one, CV17 and CV18 for a long one,
 * CV29 for which of them counts. CV29 is for forward running without a speed table of one's own.
 */
export function decoderSettings({
  addressKind,
  address,
  analogAllowed,
}: Pick<Decoder, "addressKind" | "address" | "analogAllowed">): readonly Setting[] {
  const isLong = addressKind === "long";
  const configuration: Setting = {
    variable: "CV29",
    value: STEPS + (analogAllowed ? ANALOG : 0) + (isLong ? LONG : 0),
    words: `${isLong ? "long" : "short"} address, 28 or 128 steps, ${analogAllowed ? "runs on analog track too" : "digital only"}`,
  };
  if (!isLong) return [{ variable: "CV1", value: address, words: "the address" }, configuration];
  return [
    { variable: "CV17", value: LONG_BASE + Math.floor(address / 256), words: "the address, first half" },
    { variable: "CV18", value: address % 256, words: "the address, second half" },
    configuration,
  ];
}
