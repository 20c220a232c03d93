-- the time of day of a short test, in seconds, so that of two on one day it shows which was last; of those that were recorded on
-- their day, it is when they were
ALTER TABLE "short_tests" DISABLE TRIGGER USER;
ALTER TABLE "short_tests" ADD COLUMN "tested_s" INTEGER;
UPDATE "short_tests" t SET "tested_s" = floor(extract(epoch FROM (t."created_at" AT TIME ZONE c."time_zone")::time)), "version" = t."version" + 1
  FROM "clubs" c
  WHERE c."id" = t."club_id" AND (t."created_at" AT TIME ZONE c."time_zone")::date = t."tested_on";
ALTER TABLE "short_tests" ENABLE TRIGGER USER;
ALTER TABLE "short_tests" ADD CONSTRAINT "short_tests_time_sane" CHECK ("tested_s" BETWEEN 0 AND 86399);
