import type { Cleaned } from "./cleaned.ts";
import { orientationOf, orientationSegment } from "./orientation.ts";

// ITU-T T.81, table B.1
const SOF0 = 0xc0;
const SOF15 = 0xcf;
const DHT = 0xc4;
const JPG = 0xc8;
const DAC = 0xcc;
const SOI = 0xd8;
const EOI = 0xd9;
const SOS = 0xda;
const DQT = 0xdb;
const EXP = 0xdf;
const APP0 = 0xe0;
const APP1 = 0xe1;
const APP2 = 0xe2;
const APP14 = 0xee;

/**
 * A JPEG up to its end with what one sees and nothing else: its tables, frames and scans, and of application segments those
 * that say how its colours are meant (JFIF, the colour profile, Adobe's transform). Which way up it is held stays.
 * ITU-T T.81 annex B; ITU-T T.871 (JFIF); ICC.1 annex B.4; CIPA DC-008 (Exif).
 */
export function cleanJpeg(bytes: Buffer): Cleaned {
  const kept: Buffer[] = [];
  let orientation = 1;
  let hasFrame = false;
  let hasScan = false;
  let at = 2;
  while (at + 1 < bytes.length) {
    if (bytes[at] !== 0xff) return "cut off";
    const marker = bytes[at + 1] ?? 0;
    // any marker may have more of these before it
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === EOI)
      return hasFrame && hasScan
        ? Buffer.concat([START, ...withOrientation(kept, orientation), END])
        : "empty";
    const end = at + 2 < bytes.length - 1 ? at + 2 + bytes.readUInt16BE(at + 2) : bytes.length + 1;
    if (end > bytes.length || end < at + 4) return "cut off";
    const segment = bytes.subarray(at, end);
    if (marker === APP1) orientation = orientationOf(segment.subarray(4)) ?? orientation;
    if (isOfThePicture(marker, segment.subarray(4)))
      kept.push(marker === APP0 ? withoutThumbnail(segment) : segment);
    hasFrame ||= isFrame(marker);
    at = end;
    if (marker === SOS) {
      hasScan = true;
      const next = endOfScan(bytes, at);
      kept.push(bytes.subarray(at, next));
      at = next;
    }
  }
  return "cut off";
}

/** Marker, length, name, version, density, sides of the small copy. */
const JFIF_BYTES = 18;

const START = Buffer.from([0xff, SOI]);
const END = Buffer.from([0xff, EOI]);

const isFrame = (marker: number) =>
  marker >= SOF0 && marker <= SOF15 && marker !== DHT && marker !== JPG && marker !== DAC;

function isOfThePicture(marker: number, data: Buffer): boolean {
  const begins = (name: string) => data.toString("latin1", 0, name.length) === name;
  // what else APP0 may hold is a small copy of the picture, as it was before it was cut
  if (marker === APP0) return begins("JFIF\0");
  if (marker === APP2) return begins("ICC_PROFILE\0");
  if (marker === APP14) return begins("Adobe");
  return (marker >= SOF0 && marker <= SOF15) || marker === SOS || (marker >= DQT && marker <= EXP);
}

/** T.871, 10.1: the last two bytes of a JFIF segment are the sides of a small copy of the picture, which follows. */
function withoutThumbnail(segment: Buffer): Buffer {
  if (segment.length <= JFIF_BYTES) return segment;
  const bare = Buffer.from(segment.subarray(0, JFIF_BYTES));
  bare.writeUInt16BE(JFIF_BYTES - 2, 2);
  bare.writeUInt16BE(0, JFIF_BYTES - 2);
  return bare;
}

/** JFIF comes first, T.871 10.1; Exif right after it. */
function withOrientation(segments: readonly Buffer[], orientation: number): readonly Buffer[] {
  if (orientation === 1) return segments;
  const first = segments[0]?.[1] === APP0 ? 1 : 0;
  return [...segments.slice(0, first), orientationSegment(orientation), ...segments.slice(first)];
}

/** Where the marker after coded data stands: T.81, B.1.1.5, a stuffed zero and restarts are part of the data. */
function endOfScan(bytes: Buffer, from: number): number {
  for (let at = from; at + 1 < bytes.length; at++) {
    if (bytes[at] !== 0xff) continue;
    const next = bytes[at + 1] ?? 0;
    const isData = next === 0 || next === 0xff || (next >= 0xd0 && next <= 0xd7);
    if (!isData) return at;
  }
  return bytes.length;
}
