-- The night as it is run: its layout clock, who is here, handsets, trains, replacements, trips.
-- References to slots are deferred: a session's slots are stored anew when it changes, and must then still be there.

-- CreateTable
CREATE TABLE "night_clock_changes" (
    "club_id" UUID NOT NULL,
    "session_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "slot_code" TEXT NOT NULL,
    "run" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "layout_s" INTEGER,
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "night_clock_changes_pkey" PRIMARY KEY ("session_id","position")
);

-- CreateTable
CREATE TABLE "night_attendances" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "session_id" UUID NOT NULL,
    "member_code" TEXT NOT NULL,
    "since" TIMESTAMPTZ(3) NOT NULL,
    "until" TIMESTAMPTZ(3),

    CONSTRAINT "night_attendances_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "night_handsets" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "session_id" UUID NOT NULL,
    "handset_code" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "member_code" TEXT,
    "since" TIMESTAMPTZ(3) NOT NULL,
    "until" TIMESTAMPTZ(3),

    CONSTRAINT "night_handsets_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "night_trains" (
    "club_id" UUID NOT NULL,
    "session_id" UUID NOT NULL,
    "slot_code" TEXT NOT NULL,
    "train_code" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "late_minutes" INTEGER,
    "departed_at" TIMESTAMPTZ(3),
    "arrived_at" TIMESTAMPTZ(3),
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 2,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "night_trains_pkey" PRIMARY KEY ("session_id","slot_code","train_code")
);

-- CreateTable
CREATE TABLE "night_replacements" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "session_id" UUID NOT NULL,
    "slot_code" TEXT NOT NULL,
    "train_code" TEXT NOT NULL,
    "locomotive_code" TEXT NOT NULL,
    "replacement_code" TEXT,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "night_replacements_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "night_trips" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "session_id" UUID NOT NULL,
    "district_code" TEXT NOT NULL,
    "measured_ma" INTEGER,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "night_trips_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "night_clock_changes_session_id_slot_code_idx" ON "night_clock_changes"("session_id", "slot_code");

-- CreateIndex
CREATE INDEX "night_attendances_club_id_session_id_idx" ON "night_attendances"("club_id", "session_id");

-- CreateIndex
CREATE INDEX "night_attendances_club_id_member_code_idx" ON "night_attendances"("club_id", "member_code");

-- CreateIndex
CREATE INDEX "night_handsets_club_id_session_id_idx" ON "night_handsets"("club_id", "session_id");

-- CreateIndex
CREATE INDEX "night_handsets_club_id_handset_code_idx" ON "night_handsets"("club_id", "handset_code");

-- CreateIndex
CREATE INDEX "night_handsets_club_id_member_code_idx" ON "night_handsets"("club_id", "member_code");

-- CreateIndex
CREATE INDEX "night_trains_club_id_session_id_idx" ON "night_trains"("club_id", "session_id");

-- CreateIndex
CREATE INDEX "night_replacements_club_id_session_id_idx" ON "night_replacements"("club_id", "session_id");

-- CreateIndex
CREATE INDEX "night_replacements_club_id_locomotive_code_idx" ON "night_replacements"("club_id", "locomotive_code");

-- CreateIndex
CREATE INDEX "night_replacements_club_id_replacement_code_idx" ON "night_replacements"("club_id", "replacement_code");

-- CreateIndex
CREATE UNIQUE INDEX "night_replacements_one_a_locomotive" ON "night_replacements"("session_id", "slot_code", "train_code", "locomotive_code");

-- CreateIndex
CREATE INDEX "night_trips_club_id_session_id_idx" ON "night_trips"("club_id", "session_id");

-- CreateIndex
CREATE INDEX "night_trips_club_id_district_code_idx" ON "night_trips"("club_id", "district_code");

-- AddForeignKey
ALTER TABLE "night_clock_changes" ADD CONSTRAINT "night_clock_changes_club_id_session_id_fkey" FOREIGN KEY ("club_id", "session_id") REFERENCES "sessions"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "night_clock_changes" ADD CONSTRAINT "night_clock_changes_session_id_slot_code_fkey" FOREIGN KEY ("session_id", "slot_code") REFERENCES "slots"("session_id", "code") ON DELETE NO ACTION ON UPDATE CASCADE DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "night_attendances" ADD CONSTRAINT "night_attendances_club_id_session_id_fkey" FOREIGN KEY ("club_id", "session_id") REFERENCES "sessions"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "night_attendances" ADD CONSTRAINT "night_attendances_club_id_member_code_fkey" FOREIGN KEY ("club_id", "member_code") REFERENCES "members"("club_id", "code") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "night_handsets" ADD CONSTRAINT "night_handsets_club_id_session_id_fkey" FOREIGN KEY ("club_id", "session_id") REFERENCES "sessions"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "night_handsets" ADD CONSTRAINT "night_handsets_club_id_handset_code_fkey" FOREIGN KEY ("club_id", "handset_code") REFERENCES "handsets"("club_id", "code") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "night_handsets" ADD CONSTRAINT "night_handsets_club_id_member_code_fkey" FOREIGN KEY ("club_id", "member_code") REFERENCES "members"("club_id", "code") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "night_trains" ADD CONSTRAINT "night_trains_club_id_session_id_fkey" FOREIGN KEY ("club_id", "session_id") REFERENCES "sessions"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "night_trains" ADD CONSTRAINT "night_trains_session_id_slot_code_fkey" FOREIGN KEY ("session_id", "slot_code") REFERENCES "slots"("session_id", "code") ON DELETE NO ACTION ON UPDATE CASCADE DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "night_replacements" ADD CONSTRAINT "night_replacements_club_id_session_id_fkey" FOREIGN KEY ("club_id", "session_id") REFERENCES "sessions"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "night_replacements" ADD CONSTRAINT "night_replacements_session_id_slot_code_fkey" FOREIGN KEY ("session_id", "slot_code") REFERENCES "slots"("session_id", "code") ON DELETE NO ACTION ON UPDATE CASCADE DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "night_replacements" ADD CONSTRAINT "night_replacements_club_id_locomotive_code_fkey" FOREIGN KEY ("club_id", "locomotive_code") REFERENCES "locomotives"("club_id", "code") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "night_replacements" ADD CONSTRAINT "night_replacements_club_id_replacement_code_fkey" FOREIGN KEY ("club_id", "replacement_code") REFERENCES "locomotives"("club_id", "code") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "night_trips" ADD CONSTRAINT "night_trips_club_id_session_id_fkey" FOREIGN KEY ("club_id", "session_id") REFERENCES "sessions"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "night_trips" ADD CONSTRAINT "night_trips_club_id_district_code_fkey" FOREIGN KEY ("club_id", "district_code") REFERENCES "districts"("club_id", "code") ON DELETE CASCADE ON UPDATE CASCADE;


ALTER TABLE "night_clock_changes"
  ADD CONSTRAINT "night_clock_changes_run_known" CHECK ("run" IN ('start', 'pause', 'set')),
  ADD CONSTRAINT "night_clock_changes_position_sane" CHECK ("position" >= 0),
  ADD CONSTRAINT "night_clock_changes_set_to" CHECK (("run" = 'set') = ("layout_s" IS NOT NULL) AND "layout_s" BETWEEN 0 AND 359999);

ALTER TABLE "night_attendances"
  ADD CONSTRAINT "night_attendances_end_after_start" CHECK ("until" >= "since"),
  ADD CONSTRAINT "night_attendances_once" EXCLUDE USING gist
    ("club_id" WITH =, "session_id" WITH =, "member_code" WITH =, tstzrange("since", "until", '[)') WITH &&);

-- one pair of hands at a time, whatever the night
ALTER TABLE "night_handsets"
  ADD CONSTRAINT "night_handsets_state_known" CHECK ("state" IN ('out', 'flat', 'faulty')),
  ADD CONSTRAINT "night_handsets_holder" CHECK (("state" = 'out') = ("member_code" IS NOT NULL)),
  ADD CONSTRAINT "night_handsets_end_after_start" CHECK ("until" >= "since"),
  ADD CONSTRAINT "night_handsets_one_place" EXCLUDE USING gist
    ("club_id" WITH =, "handset_code" WITH =, tstzrange("since", "until", '[)') WITH &&);

ALTER TABLE "night_trains"
  ADD CONSTRAINT "night_trains_state_known" CHECK ("state" IN ('waiting', 'running', 'arrived', 'left out')),
  ADD CONSTRAINT "night_trains_late_sane" CHECK ("late_minutes" BETWEEN 0 AND 1440),
  ADD CONSTRAINT "night_trains_departed" CHECK ("departed_at" IS NULL OR "state" IN ('running', 'arrived')),
  ADD CONSTRAINT "night_trains_arrived" CHECK (("arrived_at" IS NOT NULL) = ("state" = 'arrived') AND "arrived_at" >= "departed_at");

ALTER TABLE "night_replacements"
  ADD CONSTRAINT "night_replacements_another" CHECK ("replacement_code" <> "locomotive_code");

ALTER TABLE "night_trips" ADD CONSTRAINT "night_trips_current_sane" CHECK ("measured_ma" >= 0);

CREATE TRIGGER "night_trains_count_change" BEFORE UPDATE ON "night_trains" FOR EACH ROW EXECUTE FUNCTION count_change();
