const HEAD_BYTES = 12;
const FRAME_BYTES = 8;

const TOLD_BESIDES = new Set(["EXIF", "XMP "]);
/** Flags of a VP8X chunk that say both are there. */
const HAS_THEM = 0x08 | 0x04;

/** A WebP without its Exif and XMP chunks; null where it breaks off. RFC 9649, 2.3 to 2.7. */
export function cleanWebp(bytes: Buffer): Buffer | null {
  const whole = FRAME_BYTES + bytes.readUInt32LE(4);
  if (whole > bytes.length) return null;
  const chunks: Buffer[] = [];
  for (let at = HEAD_BYTES; at < whole; ) {
    if (at + FRAME_BYTES > whole) return null;
    const type = bytes.toString("latin1", at, at + 4);
    const size = bytes.readUInt32LE(at + 4);
    // chunks begin at even places
    const end = at + FRAME_BYTES + size + (size % 2);
    if (end > whole) return null;
    if (!TOLD_BESIDES.has(type))
      chunks.push(type === "VP8X" ? unflagged(bytes.subarray(at, end)) : bytes.subarray(at, end));
    at = end;
  }
  if (chunks.length === 0) return null;
  const body = Buffer.concat(chunks);
  const head = Buffer.from("RIFF\0\0\0\0WEBP", "latin1");
  head.writeUInt32LE(body.length + 4, 4);
  return Buffer.concat([head, body]);
}

function unflagged(chunk: Buffer): Buffer {
  const copy = Buffer.from(chunk);
  if (copy.length > FRAME_BYTES) copy[FRAME_BYTES] = (copy[FRAME_BYTES] ?? 0) & ~HAS_THEM;
  return copy;
}
