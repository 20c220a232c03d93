import type { Cleaned } from "./cleaned.ts";

const HEAD_BYTES = 12;
const FRAME_BYTES = 8;
/** What an animation's frame says of itself before its own chunks: RFC 9649, 2.7.1.1. */
const FRAME_HEAD_BYTES = 16;

// RFC 9649, 2.5 to 2.7: what one sees comes from these alone
const OF_THE_PICTURE = new Set(["VP8X", "VP8 ", "VP8L", "ALPH", "ANIM", "ANMF", "ICCP"]);
const IMAGES = new Set(["VP8 ", "VP8L", "ANMF"]);
/** Flags of a VP8X chunk that say there are Exif and XMP. */
const HAS_THEM = 0x08 | 0x04;

/** A WebP with what one sees and nothing else: no Exif, XMP, credentials. RFC 9649, 2.3 to 2.7. */
export function cleanWebp(bytes: Buffer): Cleaned {
  const whole = FRAME_BYTES + bytes.readUInt32LE(4);
  if (whole > bytes.length) return "cut off";
  const chunks = keepChunks(bytes.subarray(HEAD_BYTES, Math.max(HEAD_BYTES, whole)));
  if (!Array.isArray(chunks)) return chunks;
  const body = Buffer.concat(chunks);
  const head = Buffer.from("RIFF\0\0\0\0WEBP", "latin1");
  head.writeUInt32LE(body.length + 4, 4);
  return Buffer.concat([head, body]);
}

/** The chunks of the picture among those that lie one after the other. */
function keepChunks(bytes: Buffer): Buffer[] | "cut off" | "empty" {
  const kept: Buffer[] = [];
  let hasImage = false;
  for (let at = 0; at < bytes.length; ) {
    if (at + FRAME_BYTES > bytes.length) return "cut off";
    const type = bytes.toString("latin1", at, at + 4);
    const size = bytes.readUInt32LE(at + 4);
    // chunks begin at even places
    const end = at + FRAME_BYTES + size + (size % 2);
    if (end > bytes.length) return "cut off";
    if (OF_THE_PICTURE.has(type)) {
      const chunk = keepChunk(type, bytes.subarray(at, end), size);
      if (!Buffer.isBuffer(chunk)) return chunk;
      kept.push(chunk);
    }
    hasImage ||= IMAGES.has(type);
    at = end;
  }
  return hasImage ? kept : "empty";
}

function keepChunk(type: string, chunk: Buffer, size: number): Cleaned {
  if (type === "VP8X") return unflagged(chunk);
  if (type !== "ANMF") return chunk;
  const start = FRAME_BYTES + FRAME_HEAD_BYTES;
  const frame = keepChunks(chunk.subarray(start, FRAME_BYTES + size));
  if (!Array.isArray(frame)) return frame;
  // of even size, as each of its chunks is
  const cleaned = Buffer.concat([chunk.subarray(0, start), ...frame]);
  cleaned.writeUInt32LE(cleaned.length - FRAME_BYTES, 4);
  return cleaned;
}

function unflagged(chunk: Buffer): Buffer {
  const copy = Buffer.from(chunk);
  if (copy.length > FRAME_BYTES) copy[FRAME_BYTES] = (copy[FRAME_BYTES] ?? 0) & ~HAS_THEM;
  return copy;
}
