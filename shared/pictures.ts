import { z } from "zod";
import { code } from "./units.ts";

/** Known by their first bytes; none of them can carry a script that a browser would run. */
export const PICTURE_TYPES = ["image/png", "image/jpeg", "image/webp"] as const;

/** Most bytes of a picture: a photograph of 1,600 pixels across takes about a fifth of it. */
export const PICTURE_BYTES = 2 * 1024 * 1024;

export const pictureSummary = z
  .strictObject({
    code: code.meta({ description: "Code of the locomotive or rake that it shows." }),
    mediaType: z.enum(PICTURE_TYPES).meta({ description: "What it is, by its bytes." }),
    sizeBytes: z.int().meta({ description: "Bytes that are kept, without what was taken out." }),
    tag: z
      .string()
      .meta({ description: "Another picture has another tag; the answer's ETag without quotes." }),
  })
  .meta({ id: "PictureSummary" });

/** Which records of a club have a picture. */
export const pictureList = z
  .strictObject({ locomotives: z.array(pictureSummary), rakes: z.array(pictureSummary) })
  .meta({ id: "PictureList" });

export type PictureType = (typeof PICTURE_TYPES)[number];
export type PictureSummary = z.output<typeof pictureSummary>;
export type PictureList = z.output<typeof pictureList>;
