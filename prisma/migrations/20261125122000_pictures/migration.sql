-- what a locomotive or rake looks like; renamed with it, gone with it
CREATE TABLE "locomotive_pictures" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "locomotive_code" TEXT NOT NULL,
    "media_type" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,
    "digest" TEXT NOT NULL,

    CONSTRAINT "locomotive_pictures_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "rake_pictures" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "rake_code" TEXT NOT NULL,
    "media_type" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,
    "digest" TEXT NOT NULL,

    CONSTRAINT "rake_pictures_pkey" PRIMARY KEY ("id")
);

CREATE UNIQUE INDEX "locomotive_pictures_club_id_locomotive_code_key" ON "locomotive_pictures"("club_id", "locomotive_code");
CREATE UNIQUE INDEX "rake_pictures_club_id_rake_code_key" ON "rake_pictures"("club_id", "rake_code");

ALTER TABLE "locomotive_pictures" ADD CONSTRAINT "locomotive_pictures_club_id_locomotive_code_fkey" FOREIGN KEY ("club_id", "locomotive_code") REFERENCES "locomotives"("club_id", "code") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "rake_pictures" ADD CONSTRAINT "rake_pictures_club_id_rake_code_fkey" FOREIGN KEY ("club_id", "rake_code") REFERENCES "rakes"("club_id", "code") ON DELETE CASCADE ON UPDATE CASCADE;

ALTER TABLE "locomotive_pictures"
  ADD CONSTRAINT "locomotive_pictures_media_type_known" CHECK ("media_type" IN ('image/png', 'image/jpeg', 'image/webp')),
  ADD CONSTRAINT "locomotive_pictures_bytes_sane" CHECK (octet_length("bytes") BETWEEN 1 AND 2097152);
ALTER TABLE "rake_pictures"
  ADD CONSTRAINT "rake_pictures_media_type_known" CHECK ("media_type" IN ('image/png', 'image/jpeg', 'image/webp')),
  ADD CONSTRAINT "rake_pictures_bytes_sane" CHECK (octet_length("bytes") BETWEEN 1 AND 2097152);

SELECT keep_trail('locomotive_pictures', 'locomotive-picture', 'locomotive_code', withheld => '{bytes}');
SELECT keep_trail('rake_pictures', 'rake-picture', 'rake_code', withheld => '{bytes}');
