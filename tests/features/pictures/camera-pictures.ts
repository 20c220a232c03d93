import { crc32, deflateSync } from "node:zlib";

/** Small whole pictures, and the parts that cameras and programs write into them. */

const CRC_BYTES = 4;

/** W3C PNG, 5.3: length, type, data, check sum of type and data. */
export function pngChunk(type: string, data: string | Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, "latin1"), Buffer.from(data as string, "latin1")]);
  const chunk = Buffer.alloc(4 + body.length + CRC_BYTES);
  chunk.writeUInt32BE(body.length - 4, 0);
  body.copy(chunk, 4);
  chunk.writeUInt32BE(crc32(body), 4 + body.length);
  return chunk;
}

/** One grey pixel, with chunks put before the picture's own data. */
export function basePng(more: readonly Buffer[] = []): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(1, 0);
  head.writeUInt32BE(1, 4);
  head.set([8, 0, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from("89504e470d0a1a0a", "hex"),
    pngChunk("IHDR", head),
    ...more,
    pngChunk("IDAT", deflateSync(Buffer.from([0, 128]))),
    pngChunk("IEND", ""),
  ]);
}

/** RFC 9649, 2.3: type, length, data to an even number of bytes. */
export function webpChunk(type: string, data: string | Buffer): Buffer {
  const body = Buffer.from(data as string, "latin1");
  const chunk = Buffer.alloc(8 + body.length + (body.length % 2));
  chunk.write(type, "latin1");
  chunk.writeUInt32LE(body.length, 4);
  body.copy(chunk, 8);
  return chunk;
}

/** As RFC 9649 lays chunks out; what is in the picture's own is nobody's matter here. With more chunks, its flags say so. */
export function baseWebp(more: readonly Buffer[] = []): Buffer {
  const flags = more.length > 0 ? 0x0c : 0;
  const chunks = [
    webpChunk("VP8X", Buffer.from([flags, 0, 0, 0, 0, 0, 0, 0, 0, 0])),
    webpChunk("VP8L", Buffer.from("2f00000010071011118888080000", "hex")),
    ...more,
  ];
  const body = Buffer.concat([Buffer.from("WEBP", "latin1"), ...chunks]);
  const head = Buffer.from("RIFF\0\0\0\0", "latin1");
  head.writeUInt32LE(body.length, 4);
  return Buffer.concat([head, body]);
}

/** ITU-T T.81, B.1.1.4: marker, length of itself and its data, data. */
export function jpegSegment(marker: number, data: string | Buffer): Buffer {
  const body = Buffer.from(data as string, "latin1");
  const head = Buffer.from([0xff, marker, 0, 0]);
  head.writeUInt16BE(2 + body.length, 2);
  return Buffer.concat([head, body]);
}

/** T.81, B.2.2: a baseline frame of 1 × 1 grey. */
export const JPEG_FRAME = jpegSegment(0xc0, "\x08\0\x01\0\x01\x01\x01\x11\0");

/** JFIF with a frame of two scans, a stuffed zero, a restart and a thing like a marker in its data; more segments after the first. */
export function baseJpeg(more: readonly Buffer[] = []): Buffer {
  const scan = (data: string) =>
    Buffer.concat([jpegSegment(0xda, "\x01\x01\0\0?\0"), Buffer.from(data, "hex")]);
  return Buffer.concat([
    Buffer.from("ffd8", "hex"),
    jpegSegment(0xe0, "JFIF\0\x01\x02\0\0\x01\0\x01\0\0"),
    ...more,
    jpegSegment(0xdb, Buffer.alloc(65, 1)),
    JPEG_FRAME,
    scan("12ff0034ffd056"),
    jpegSegment(0xc4, Buffer.alloc(20)),
    scan("78ff009a"),
    Buffer.from("ffd9", "hex"),
  ]);
}

/** Exif as cameras write it: maker (0x010F), orientation (0x0112), place (0x8825), and the text behind them. */
export function withExif(orientation: number, text: string, little = true): Buffer {
  const tiff = Buffer.alloc(8 + 2 + 3 * 12 + 4 + text.length);
  const short = (value: number, at: number) =>
    little ? tiff.writeUInt16LE(value, at) : tiff.writeUInt16BE(value, at);
  const long = (value: number, at: number) =>
    little ? tiff.writeUInt32LE(value, at) : tiff.writeUInt32BE(value, at);
  tiff.write(little ? "II" : "MM", "latin1");
  short(42, 2);
  long(8, 4);
  short(3, 8);
  for (const [entry, [tag, type, count]] of [
    [0x010f, 2, text.length],
    [0x0112, 3, 1],
    [0x8825, 4, 1],
  ].entries()) {
    const at = 10 + entry * 12;
    short(tag ?? 0, at);
    short(type ?? 0, at + 2);
    long(count ?? 0, at + 4);
    if (tag === 0x0112) short(orientation, at + 8);
    else long(50, at + 8);
  }
  tiff.write(text, 50, "latin1");
  return jpegSegment(0xe1, Buffer.concat([Buffer.from("Exif\0\0", "latin1"), tiff]));
}
