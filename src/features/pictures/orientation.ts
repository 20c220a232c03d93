const HEAD = Buffer.from("Exif\0\0", "latin1");
/** CIPA DC-008 (Exif) 4.6.5: which way up the picture is held, 1 to 8; 1 is as it lies in the file. */
const ORIENTATION = 0x0112;
const SHORT = 3;
const ENTRY_BYTES = 12;
/** Of its own fields a camera writes a few dozen. */
const MOST_ENTRIES = 500;

/** The orientation that the data of an Exif segment say; undefined where they say none. TIFF 6.0, section 2. */
export function orientationOf(data: Buffer): number | undefined {
  if (!data.subarray(0, HEAD.length).equals(HEAD)) return undefined;
  const tiff = data.subarray(HEAD.length);
  if (tiff.length < 8) return undefined;
  const isLittle = tiff.toString("latin1", 0, 2) === "II";
  const short = (at: number) => (isLittle ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at));
  const first = isLittle ? tiff.readUInt32LE(4) : tiff.readUInt32BE(4);
  if (first + 2 > tiff.length) return undefined;
  const entries = Math.min(short(first), MOST_ENTRIES);
  for (let entry = 0; entry < entries; entry++) {
    const at = first + 2 + entry * ENTRY_BYTES;
    if (at + ENTRY_BYTES > tiff.length) return undefined;
    if (short(at) !== ORIENTATION || short(at + 2) !== SHORT) continue;
    const value = short(at + 8);
    return value >= 1 && value <= 8 ? value : undefined;
  }
  return undefined;
}

/** An Exif segment that says this and nothing else. */
export function orientationSegment(orientation: number): Buffer {
  const tiff = Buffer.alloc(26);
  tiff.write("MM\0*", "latin1");
  tiff.writeUInt32BE(8, 4);
  tiff.writeUInt16BE(1, 8);
  tiff.writeUInt16BE(ORIENTATION, 10);
  tiff.writeUInt16BE(SHORT, 12);
  tiff.writeUInt32BE(1, 14);
  tiff.writeUInt16BE(orientation, 18);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(2 + HEAD.length + tiff.length, 2);
  return Buffer.concat([head, HEAD, tiff]);
}
