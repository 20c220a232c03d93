import type { Cleaned } from "./cleaned.ts";

const SIGNATURE_BYTES = 8;
/** Length, type and check sum around a chunk's data. */
const FRAME_BYTES = 12;

// what one sees comes from these alone. W3C PNG (third edition), 11.2 critical chunks, 11.3.1 transparency, 11.3.2 colour
// space, 11.3.4 background and shape of pixels, 11.3.6 animation
const OF_THE_PICTURE = new Set([
  ...["IHDR", "PLTE", "IDAT", "IEND", "tRNS"],
  ...["cICP", "iCCP", "sRGB", "gAMA", "cHRM", "sBIT", "mDCV", "cLLI"],
  ...["bKGD", "pHYs", "acTL", "fcTL", "fdAT"],
]);

/** A PNG up to its end with what one sees and nothing else: no text, time, Exif, credentials. W3C PNG, 5.3 chunk layout. */
export function cleanPng(bytes: Buffer): Cleaned {
  const kept = [bytes.subarray(0, SIGNATURE_BYTES)];
  const types = new Set<string>();
  let at = SIGNATURE_BYTES;
  while (at + FRAME_BYTES <= bytes.length) {
    const type = bytes.toString("latin1", at + 4, at + 8);
    const end = at + FRAME_BYTES + bytes.readUInt32BE(at);
    if (end > bytes.length) return "cut off";
    if (OF_THE_PICTURE.has(type)) kept.push(bytes.subarray(at, end));
    types.add(type);
    if (type === "IEND") return types.has("IHDR") && types.has("IDAT") ? Buffer.concat(kept) : "empty";
    at = end;
  }
  return "cut off";
}
