import type { PictureSummary } from "../../../shared/pictures.ts";
import { change } from "../api/ask.ts";
import { noAnswer, Problem, toProblem } from "../api/problem.ts";
import { clubPath } from "../api/service.ts";

export type Stock = "locomotives" | "rakes";

export const picturePath = (club: string, stock: Stock, code: string) =>
  `${clubPath(club)}/${stock}/${encodeURIComponent(code)}/picture`;

/** Where an image asks for it: another picture has another address, so that it is never an old one that is shown. */
export const pictureSource = (club: string, stock: Stock, { code, tag }: PictureSummary) =>
  `${picturePath(club, stock, code)}?${new URLSearchParams({ tag })}`;

/** CSS pixels of the longer side: more than any page shows. */
const MOST_PIXELS = 1_600;
/** Bytes that go as they are. */
const SMALL_BYTES = 1_000_000;
const QUALITY = 0.85;
const TAKEN = new Set(["image/png", "image/jpeg", "image/webp"]);

/** Sends a picture, made smaller where a camera made it large; throws a Problem. */
export async function sendPicture(club: string, stock: Stock, code: string, file: Blob) {
  const bytes = await toFitting(file);
  return (await change<PictureSummary>("PUT", picturePath(club, stock, code), { bytes })).value;
}

/** The picture as it is kept, to be put back; null where there is none. */
export async function keepPicture(
  club: string,
  stock: Stock,
  code: string,
): Promise<{ putBack: () => Promise<unknown> } | null> {
  const response = await fetch(picturePath(club, stock, code), { credentials: "same-origin" }).catch(() => {
    throw noAnswer();
  });
  if (response.status === 404) return null;
  if (!response.ok) throw await toProblem(response);
  const bytes = await response.blob();
  return { putBack: () => change("PUT", picturePath(club, stock, code), { bytes }) };
}

export const removePicture = (club: string, stock: Stock, code: string) =>
  change("DELETE", picturePath(club, stock, code));

async function toFitting(file: Blob): Promise<Blob> {
  if (TAKEN.has(file.type) && file.size <= SMALL_BYTES) return file;
  const bitmap = await createImageBitmap(file).catch(() => null);
  if (bitmap === null)
    throw new Problem(0, "This device cannot read it as a picture.", "", ["Choose a PNG, JPEG or WebP."]);
  const scale = Math.min(1, MOST_PIXELS / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(bitmap.width * scale));
  canvas.height = Math.max(1, Math.round(bitmap.height * scale));
  canvas.getContext("2d")?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  const smaller = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", QUALITY));
  return smaller ?? file;
}
