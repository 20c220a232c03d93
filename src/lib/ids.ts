import { randomBytes } from "node:crypto";

const BYTES = 16;

/** A new UUID of version 7 (RFC 9562 section 5.7): its first 48 bits are the time in ms, so that later ones sort last. */
export function newId(nowMs: number = Date.now()): string {
  const bytes = randomBytes(BYTES);
  bytes.writeUIntBE(nowMs, 0, 6);
  bytes.writeUInt8(0x70 | (bytes.readUInt8(6) & 0x0f), 6);
  bytes.writeUInt8(0x80 | (bytes.readUInt8(8) & 0x3f), 8);
  return bytes.toString("hex").replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}
