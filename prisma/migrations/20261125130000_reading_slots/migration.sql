-- a reading's slot is one of its night's: slots know their night by its code, so that a reading can name both, and follows
-- when either gets another
ALTER TABLE "slots" DISABLE TRIGGER USER;
ALTER TABLE "slots" ADD COLUMN "session_code" TEXT;
UPDATE "slots" SET "session_code" = s.code FROM "sessions" s WHERE s.id = "slots".session_id;
ALTER TABLE "slots" ALTER COLUMN "session_code" SET NOT NULL;
ALTER TABLE "slots" ENABLE TRIGGER USER;

CREATE UNIQUE INDEX "sessions_club_id_id_code_key" ON "sessions"("club_id", "id", "code");
CREATE UNIQUE INDEX "slots_club_id_session_code_code_key" ON "slots"("club_id", "session_code", "code");

ALTER TABLE "slots" DROP CONSTRAINT "slots_club_id_session_id_fkey";
ALTER TABLE "slots" ADD CONSTRAINT "slots_club_id_session_id_session_code_fkey" FOREIGN KEY ("club_id", "session_id", "session_code") REFERENCES "sessions"("club_id", "id", "code") ON DELETE CASCADE ON UPDATE CASCADE;

-- readings of slots that there are not are kept, and belong to no slot
ALTER TABLE "readings" DISABLE TRIGGER USER;
ALTER TABLE "readings" DROP CONSTRAINT "readings_of_one_thing";
UPDATE "readings" r SET "slot_code" = NULL, "version" = r."version" + 1
  WHERE r."slot_code" IS NOT NULL AND NOT EXISTS (
    SELECT FROM "slots" s WHERE s."club_id" = r."club_id" AND s."session_code" = r."session_code" AND s."code" = r."slot_code"
  );
ALTER TABLE "readings" ENABLE TRIGGER USER;
ALTER TABLE "readings" ADD CONSTRAINT "readings_of_one_thing" CHECK (
    (num_nonnulls("locomotive_code", "state") = 2 AND num_nonnulls("district_code", "session_code", "slot_code", "layout_s") = 0)
    OR (num_nonnulls("locomotive_code", "state") = 0 AND num_nonnulls("district_code", "session_code", "layout_s") = 3)
  );

DROP INDEX "readings_club_id_session_code_idx";
CREATE INDEX "readings_club_id_session_code_slot_code_idx" ON "readings"("club_id", "session_code", "slot_code");
-- a changed session lays down its slots anew: whether one is gone shows at the end
ALTER TABLE "readings" ADD CONSTRAINT "readings_club_id_session_code_slot_code_fkey" FOREIGN KEY ("club_id", "session_code", "slot_code") REFERENCES "slots"("club_id", "session_code", "code") ON DELETE NO ACTION ON UPDATE CASCADE DEFERRABLE INITIALLY DEFERRED;

-- of a record's parts, what names the record is not worth telling
CREATE OR REPLACE FUNCTION trail_part(owner text, list jsonb[], OUT record_id uuid, OUT rows jsonb) RETURNS SETOF record LANGUAGE sql IMMUTABLE AS $$
  SELECT (r ->> owner)::uuid, jsonb_agg(jsonb_strip_nulls(r - ARRAY['club_id', 'session_code', owner])) FROM unnest(list) AS r GROUP BY r ->> owner
$$;
