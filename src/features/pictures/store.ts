import type { Database } from "../../database/client.ts";
import type { CleanPicture } from "./clean-picture.ts";

/** What pictures are of. */
export type Pictured = "locomotive" | "rake";

export interface StoredPicture extends CleanPicture {
  readonly digest: string;
}

export interface ListedPicture {
  readonly code: string;
  readonly mediaType: string;
  readonly sizeBytes: number;
  readonly digest: string;
}

export type PictureStore = ReturnType<typeof createPictureStore>;

/** The pictures of a club, by the record that they show. */
export function createPictureStore(database: Database) {
  return {
    async isThere(of: Pictured, clubId: string, code: string): Promise<boolean> {
      const where = { clubId_code: { clubId, code } };
      const select = { id: true };
      const found =
        of === "locomotive"
          ? await database.locomotive.findUnique({ where, select })
          : await database.rake.findUnique({ where, select });
      return found !== null;
    },

    find(of: Pictured, clubId: string, code: string) {
      return of === "locomotive"
        ? database.locomotivePicture.findUnique({
            where: { clubId_locomotiveCode: { clubId, locomotiveCode: code } },
          })
        : database.rakePicture.findUnique({ where: { clubId_rakeCode: { clubId, rakeCode: code } } });
    },

    async put(of: Pictured, clubId: string, code: string, picture: StoredPicture): Promise<void> {
      const kept = {
        mediaType: picture.mediaType,
        digest: picture.digest,
        bytes: new Uint8Array(picture.bytes),
      };
      if (of === "locomotive")
        await database.locomotivePicture.upsert({
          where: { clubId_locomotiveCode: { clubId, locomotiveCode: code } },
          create: { clubId, locomotiveCode: code, ...kept },
          update: kept,
        });
      else
        await database.rakePicture.upsert({
          where: { clubId_rakeCode: { clubId, rakeCode: code } },
          create: { clubId, rakeCode: code, ...kept },
          update: kept,
        });
    },

    /** Answers whether there was one. */
    async remove(of: Pictured, clubId: string, code: string): Promise<boolean> {
      const { count } =
        of === "locomotive"
          ? await database.locomotivePicture.deleteMany({ where: { clubId, locomotiveCode: code } })
          : await database.rakePicture.deleteMany({ where: { clubId, rakeCode: code } });
      return count > 0;
    },

    /** Without their bytes, which only the database counts. */
    list: (of: Pictured, clubId: string): Promise<ListedPicture[]> =>
      of === "locomotive"
        ? database.$queryRaw`select locomotive_code as code, media_type as "mediaType", octet_length(bytes) as "sizeBytes", digest
            from locomotive_pictures where club_id = ${clubId}::uuid order by locomotive_code`
        : database.$queryRaw`select rake_code as code, media_type as "mediaType", octet_length(bytes) as "sizeBytes", digest
            from rake_pictures where club_id = ${clubId}::uuid order by rake_code`,
  };
}
