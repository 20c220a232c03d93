import { createHash } from "node:crypto";
import type { PictureList, PictureSummary, PictureType } from "../../../shared/pictures.ts";
import type { DatabaseClient } from "../../database/client.ts";
import { reachClub } from "../../records/reach-club.ts";
import { cleanPicture } from "./clean-picture.ts";
import { noBytes, noPicture, noRecord } from "./errors.ts";
import { createPictureStore, type ListedPicture, type Pictured, type StoredPicture } from "./store.ts";

export type PictureService = ReturnType<typeof createPictureService>;

export function createPictureService(database: DatabaseClient) {
  const store = createPictureStore(database);
  return {
    /** @throws Refusal not-found */
    async list(club: string): Promise<PictureList> {
      const { id } = await reachClub(database, club);
      const [locomotives, rakes] = [await store.list("locomotive", id), await store.list("rake", id)];
      return { locomotives: locomotives.map(toSummary), rakes: rakes.map(toSummary) };
    },

    /** @throws Refusal not-found */
    async read(club: string, of: Pictured, code: string): Promise<StoredPicture> {
      const { id } = await reachClub(database, club);
      const found = await store.find(of, id, code);
      if (found === null) throw noPicture(of, code);
      const { mediaType, digest, bytes } = found;
      return { mediaType: mediaType as PictureType, digest, bytes: Buffer.from(bytes) };
    },

    /**
     * Keeps a picture in place of the one there may be, cleaned of what it tells besides itself.
     * @throws Refusal not-found; validation-failed for what is no picture
     */
    async put(club: string, of: Pictured, code: string, sent: unknown): Promise<PictureSummary> {
      const { id } = await reachClub(database, club);
      if (!(await store.isThere(of, id, code))) throw noRecord(of, code);
      if (!Buffer.isBuffer(sent) || sent.length === 0) throw noBytes();
      const cleaned = cleanPicture(sent);
      const digest = createHash("sha256").update(cleaned.bytes).digest("base64url");
      await store.put(of, id, code, { ...cleaned, digest });
      return toSummary({ code, mediaType: cleaned.mediaType, sizeBytes: cleaned.bytes.length, digest });
    },

    /** @throws Refusal not-found */
    async remove(club: string, of: Pictured, code: string): Promise<void> {
      const { id } = await reachClub(database, club);
      if (!(await store.remove(of, id, code))) throw noPicture(of, code);
    },
  };
}

const toSummary = ({ code, mediaType, sizeBytes, digest }: ListedPicture): PictureSummary => ({
  code,
  mediaType: mediaType as PictureType,
  sizeBytes,
  tag: digest,
});
