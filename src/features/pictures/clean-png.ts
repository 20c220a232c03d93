const SIGNATURE_BYTES = 8;
/** Length, type and check sum around a chunk's data. */
const FRAME_BYTES = 12;

// W3C PNG, 11.3.3 textual information, 11.3.4 miscellaneous information: none of them changes what one sees
const TOLD_BESIDES = new Set(["eXIf", "tEXt", "zTXt", "iTXt", "tIME"]);

/** A PNG up to its end without texts, times and Exif; null where it has no end. W3C PNG, 5.3 chunk layout. */
export function cleanPng(bytes: Buffer): Buffer | null {
  const kept = [bytes.subarray(0, SIGNATURE_BYTES)];
  let at = SIGNATURE_BYTES;
  while (at + FRAME_BYTES <= bytes.length) {
    const type = bytes.toString("latin1", at + 4, at + 8);
    const end = at + FRAME_BYTES + bytes.readUInt32BE(at);
    if (end > bytes.length) return null;
    if (!TOLD_BESIDES.has(type)) kept.push(bytes.subarray(at, end));
    if (type === "IEND") return Buffer.concat(kept);
    at = end;
  }
  return null;
}
