import type { PictureType } from "../../../shared/pictures.ts";
import { cleanJpeg } from "./clean-jpeg.ts";
import { cleanPng } from "./clean-png.ts";
import { cleanWebp } from "./clean-webp.ts";
import type { Cleaned } from "./cleaned.ts";
import { cutOff, noPictureInside, noPictureType } from "./errors.ts";

export interface CleanPicture {
  readonly mediaType: PictureType;
  readonly bytes: Buffer;
}

type Clean = (bytes: Buffer) => Cleaned;

interface Form {
  readonly mediaType: PictureType;
  readonly clean: Clean;
  begins(bytes: Buffer): boolean;
}

const isRiffOf = (bytes: Buffer, form: string) =>
  bytes.toString("latin1", 0, 4) === "RIFF" && bytes.toString("latin1", 8, 12) === form;

const FORMS: readonly Form[] = [
  {
    // W3C PNG, 5.2 PNG signature
    mediaType: "image/png",
    clean: cleanPng,
    begins: (bytes) => bytes.subarray(0, 8).equals(Buffer.from("89504e470d0a1a0a", "hex")),
  },
  {
    // ITU-T T.81, B.1.1.3: SOI, then another marker
    mediaType: "image/jpeg",
    clean: cleanJpeg,
    begins: (bytes) => bytes.subarray(0, 3).equals(Buffer.from("ffd8ff", "hex")),
  },
  {
    // RFC 9649, 2.4
    mediaType: "image/webp",
    clean: cleanWebp,
    begins: (bytes) => isRiffOf(bytes, "WEBP"),
  },
];

/**
 * What a picture is by its bytes, whatever its name says, and the picture without what cameras write into it: place, time,
 * device, texts.
 * @throws Refusal validation-failed for what is no picture, or not all of one
 */
export function cleanPicture(bytes: Buffer): CleanPicture {
  const form = FORMS.find(({ begins }) => begins(bytes));
  if (form === undefined) throw noPictureType();
  const cleaned = form.clean(bytes);
  if (cleaned === "cut off") throw cutOff();
  if (cleaned === "empty") throw noPictureInside();
  return { mediaType: form.mediaType, bytes: cleaned };
}
