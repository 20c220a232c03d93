-- what meters showed: of one locomotive in one state, or of a district at a moment of a night
CREATE TABLE "readings" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "taken_on" DATE NOT NULL,
    "origin" TEXT NOT NULL,
    "locomotive_code" TEXT,
    "state" TEXT,
    "district_code" TEXT,
    "session_code" TEXT,
    "slot_code" TEXT,
    "layout_s" INTEGER,
    "ma" INTEGER NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "readings_pkey" PRIMARY KEY ("id")
);

CREATE UNIQUE INDEX "readings_club_id_code_key" ON "readings"("club_id", "code");
CREATE INDEX "readings_club_id_locomotive_code_idx" ON "readings"("club_id", "locomotive_code");
CREATE INDEX "readings_club_id_district_code_idx" ON "readings"("club_id", "district_code");
CREATE INDEX "readings_club_id_session_code_idx" ON "readings"("club_id", "session_code");

ALTER TABLE "readings" ADD CONSTRAINT "readings_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "readings" ADD CONSTRAINT "readings_club_id_locomotive_code_fkey" FOREIGN KEY ("club_id", "locomotive_code") REFERENCES "locomotives"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "readings" ADD CONSTRAINT "readings_club_id_district_code_fkey" FOREIGN KEY ("club_id", "district_code") REFERENCES "districts"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "readings" ADD CONSTRAINT "readings_club_id_session_code_fkey" FOREIGN KEY ("club_id", "session_code") REFERENCES "sessions"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

ALTER TABLE "readings"
  ADD CONSTRAINT "readings_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40),
  ADD CONSTRAINT "readings_ma_sane" CHECK ("ma" BETWEEN 0 AND 100000),
  ADD CONSTRAINT "readings_origin_known" CHECK ("origin" IN ('bench', 'night')),
  ADD CONSTRAINT "readings_state_known" CHECK ("state" IN ('running', 'standing', 'stalled', 'inrush')),
  ADD CONSTRAINT "readings_of_one_thing" CHECK (
    (num_nonnulls("locomotive_code", "state") = 2 AND num_nonnulls("district_code", "session_code", "slot_code", "layout_s") = 0)
    OR (num_nonnulls("locomotive_code", "state") = 0 AND num_nonnulls("district_code", "session_code", "slot_code", "layout_s") = 4)
  );

CREATE TRIGGER "readings_count_change" BEFORE UPDATE ON "readings" FOR EACH ROW EXECUTE FUNCTION count_change();

SELECT keep_trail('readings', 'reading');
