import { orientationOf, orientationSegment } from "./orientation.ts";

// ITU-T T.81, table B.1
const SOI = 0xd8;
const EOI = 0xd9;
const SOS = 0xda;
const APP0 = 0xe0;
const APP1 = 0xe1;
const APP2 = 0xe2;
const APP14 = 0xee;
const APP15 = 0xef;
const COM = 0xfe;

/**
 * A JPEG up to its end, without what cameras and programs write beside the picture: comments and all application segments but
 * those that say how its colours are meant (JFIF, the colour profile, Adobe's transform). Which way up it is held stays.
 * Null where it breaks off. ITU-T T.81 annex B; ITU-T T.871 (JFIF); ICC.1 annex B.4; CIPA DC-008 (Exif).
 */
export function cleanJpeg(bytes: Buffer): Buffer | null {
  const kept: Buffer[] = [];
  let orientation = 1;
  let at = 2;
  while (at + 1 < bytes.length) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1] ?? 0;
    // any marker may have more of these before it
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === EOI) return Buffer.concat([START, ...withOrientation(kept, orientation), END]);
    const end = at + 2 < bytes.length - 1 ? at + 2 + bytes.readUInt16BE(at + 2) : bytes.length + 1;
    if (end > bytes.length || end < at + 4) return null;
    const segment = bytes.subarray(at, end);
    if (marker === APP1) orientation = orientationOf(segment.subarray(4)) ?? orientation;
    if (isOfThePicture(marker, segment.subarray(4))) kept.push(segment);
    at = end;
    if (marker === SOS) {
      const next = endOfScan(bytes, at);
      kept.push(bytes.subarray(at, next));
      at = next;
    }
  }
  return null;
}

const START = Buffer.from([0xff, SOI]);
const END = Buffer.from([0xff, EOI]);

function isOfThePicture(marker: number, data: Buffer): boolean {
  if (marker === COM) return false;
  if (marker < APP0 || marker > APP15) return true;
  const begins = (name: string) => data.toString("latin1", 0, name.length) === name;
  // what else APP0 may hold is a small copy of the picture, as it was before it was cut
  if (marker === APP0) return begins("JFIF\0");
  return marker === APP2 ? begins("ICC_PROFILE\0") : marker === APP14 && begins("Adobe");
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
