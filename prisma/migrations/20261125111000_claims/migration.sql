-- Booking and claims: how far a night has come, who has which train, duty and handset, who waits, who would trade.
-- References to slots are deferred: a session's slots are stored anew when it changes, and must then still be there.

-- AlterTable
ALTER TABLE "places" ADD COLUMN     "x_mm" INTEGER,
ADD COLUMN     "y_mm" INTEGER;

-- CreateTable
CREATE TABLE "bookings" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "session_id" UUID NOT NULL,
    "state" TEXT NOT NULL,
    "reason" TEXT,
    "venue_note" TEXT NOT NULL DEFAULT '',
    "note_to_all" TEXT NOT NULL DEFAULT '',
    "second_claim_from" TIMESTAMPTZ(3),
    "pick_up_ms" INTEGER NOT NULL DEFAULT 0,
    "hand_in_ms" INTEGER NOT NULL DEFAULT 0,
    "version" INTEGER NOT NULL DEFAULT 2,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "bookings_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "booking_attendees" (
    "club_id" UUID NOT NULL,
    "session_id" UUID NOT NULL,
    "member_code" TEXT NOT NULL,

    CONSTRAINT "booking_attendees_pkey" PRIMARY KEY ("session_id","member_code")
);

-- CreateTable
CREATE TABLE "duties" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "session_id" UUID NOT NULL,
    "slot_code" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "place_code" TEXT,
    "starts_at" TIMESTAMPTZ(3),
    "ends_at" TIMESTAMPTZ(3),
    "requires" TEXT[],
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "duties_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "claims" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "session_id" UUID NOT NULL,
    "slot_code" TEXT NOT NULL,
    "train_id" UUID,
    "duty_id" UUID,
    "member_code" TEXT NOT NULL,
    "handset_code" TEXT,
    "from_at" TIMESTAMPTZ(3) NOT NULL,
    "until_at" TIMESTAMPTZ(3) NOT NULL,
    "free_at" TIMESTAMPTZ(3) NOT NULL,
    "assigned" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "claims_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "queue_places" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "session_id" UUID NOT NULL,
    "slot_code" TEXT NOT NULL,
    "train_id" UUID,
    "duty_id" UUID,
    "member_code" TEXT NOT NULL,
    "number" BIGSERIAL NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "queue_places_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "swaps" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "session_id" UUID NOT NULL,
    "gives_id" UUID NOT NULL,
    "wants_id" UUID NOT NULL,
    "message" TEXT NOT NULL DEFAULT '',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "swaps_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "walks" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "from_code" TEXT NOT NULL,
    "to_code" TEXT NOT NULL,
    "seconds" INTEGER NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "walks_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "idempotency_keys" (
    "owner" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "fingerprint" TEXT NOT NULL,
    "outcome" JSONB,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "idempotency_keys_pkey" PRIMARY KEY ("owner","key")
);

-- CreateIndex
CREATE UNIQUE INDEX "bookings_club_id_session_id_key" ON "bookings"("club_id", "session_id");

-- CreateIndex
CREATE INDEX "booking_attendees_club_id_member_code_idx" ON "booking_attendees"("club_id", "member_code");

-- CreateIndex
CREATE INDEX "duties_club_id_session_id_idx" ON "duties"("club_id", "session_id");

-- CreateIndex
CREATE INDEX "duties_club_id_place_code_idx" ON "duties"("club_id", "place_code");

-- CreateIndex
CREATE UNIQUE INDEX "duties_session_id_slot_code_code_key" ON "duties"("session_id", "slot_code", "code");

-- CreateIndex
CREATE UNIQUE INDEX "duties_session_id_slot_code_id_key" ON "duties"("session_id", "slot_code", "id");

-- CreateIndex
CREATE INDEX "claims_club_id_member_code_idx" ON "claims"("club_id", "member_code");

-- CreateIndex
CREATE INDEX "claims_club_id_handset_code_idx" ON "claims"("club_id", "handset_code");

-- CreateIndex
CREATE INDEX "claims_club_id_train_id_idx" ON "claims"("club_id", "train_id");

-- CreateIndex
CREATE UNIQUE INDEX "claims_one_driver_a_train" ON "claims"("session_id", "slot_code", "train_id");

-- CreateIndex
CREATE UNIQUE INDEX "claims_one_member_a_duty" ON "claims"("session_id", "slot_code", "duty_id");

-- CreateIndex
CREATE UNIQUE INDEX "claims_session_id_id_key" ON "claims"("session_id", "id");

-- CreateIndex
CREATE INDEX "queue_places_club_id_member_code_idx" ON "queue_places"("club_id", "member_code");

-- CreateIndex
CREATE INDEX "queue_places_club_id_train_id_idx" ON "queue_places"("club_id", "train_id");

-- CreateIndex
CREATE UNIQUE INDEX "queue_places_once_a_train" ON "queue_places"("session_id", "slot_code", "train_id", "member_code");

-- CreateIndex
CREATE UNIQUE INDEX "queue_places_once_a_duty" ON "queue_places"("session_id", "slot_code", "duty_id", "member_code");

-- CreateIndex
CREATE INDEX "swaps_session_id_wants_id_idx" ON "swaps"("session_id", "wants_id");

-- CreateIndex
CREATE UNIQUE INDEX "swaps_gives_id_wants_id_key" ON "swaps"("gives_id", "wants_id");

-- CreateIndex
CREATE INDEX "walks_club_id_to_code_idx" ON "walks"("club_id", "to_code");

-- CreateIndex
CREATE UNIQUE INDEX "walks_club_id_code_key" ON "walks"("club_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "walks_one_a_pair" ON "walks"("club_id", "from_code", "to_code");

-- CreateIndex
CREATE INDEX "idempotency_keys_created_at_idx" ON "idempotency_keys"("created_at");

-- AddForeignKey
ALTER TABLE "bookings" ADD CONSTRAINT "bookings_club_id_session_id_fkey" FOREIGN KEY ("club_id", "session_id") REFERENCES "sessions"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "booking_attendees" ADD CONSTRAINT "booking_attendees_club_id_session_id_fkey" FOREIGN KEY ("club_id", "session_id") REFERENCES "sessions"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "booking_attendees" ADD CONSTRAINT "booking_attendees_club_id_member_code_fkey" FOREIGN KEY ("club_id", "member_code") REFERENCES "members"("club_id", "code") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "duties" ADD CONSTRAINT "duties_club_id_session_id_fkey" FOREIGN KEY ("club_id", "session_id") REFERENCES "sessions"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "duties" ADD CONSTRAINT "duties_session_id_slot_code_fkey" FOREIGN KEY ("session_id", "slot_code") REFERENCES "slots"("session_id", "code") ON DELETE NO ACTION ON UPDATE CASCADE DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "duties" ADD CONSTRAINT "duties_club_id_place_code_fkey" FOREIGN KEY ("club_id", "place_code") REFERENCES "places"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "claims" ADD CONSTRAINT "claims_club_id_session_id_fkey" FOREIGN KEY ("club_id", "session_id") REFERENCES "sessions"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "claims" ADD CONSTRAINT "claims_session_id_slot_code_fkey" FOREIGN KEY ("session_id", "slot_code") REFERENCES "slots"("session_id", "code") ON DELETE NO ACTION ON UPDATE CASCADE DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "claims" ADD CONSTRAINT "claims_club_id_train_id_fkey" FOREIGN KEY ("club_id", "train_id") REFERENCES "trains"("club_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "claims" ADD CONSTRAINT "claims_session_id_slot_code_duty_id_fkey" FOREIGN KEY ("session_id", "slot_code", "duty_id") REFERENCES "duties"("session_id", "slot_code", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "claims" ADD CONSTRAINT "claims_club_id_member_code_fkey" FOREIGN KEY ("club_id", "member_code") REFERENCES "members"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "claims" ADD CONSTRAINT "claims_club_id_handset_code_fkey" FOREIGN KEY ("club_id", "handset_code") REFERENCES "handsets"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "queue_places" ADD CONSTRAINT "queue_places_club_id_session_id_fkey" FOREIGN KEY ("club_id", "session_id") REFERENCES "sessions"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "queue_places" ADD CONSTRAINT "queue_places_session_id_slot_code_fkey" FOREIGN KEY ("session_id", "slot_code") REFERENCES "slots"("session_id", "code") ON DELETE NO ACTION ON UPDATE CASCADE DEFERRABLE INITIALLY DEFERRED;

-- AddForeignKey
ALTER TABLE "queue_places" ADD CONSTRAINT "queue_places_club_id_train_id_fkey" FOREIGN KEY ("club_id", "train_id") REFERENCES "trains"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "queue_places" ADD CONSTRAINT "queue_places_session_id_slot_code_duty_id_fkey" FOREIGN KEY ("session_id", "slot_code", "duty_id") REFERENCES "duties"("session_id", "slot_code", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "queue_places" ADD CONSTRAINT "queue_places_club_id_member_code_fkey" FOREIGN KEY ("club_id", "member_code") REFERENCES "members"("club_id", "code") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "swaps" ADD CONSTRAINT "swaps_club_id_session_id_fkey" FOREIGN KEY ("club_id", "session_id") REFERENCES "sessions"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "swaps" ADD CONSTRAINT "swaps_session_id_gives_id_fkey" FOREIGN KEY ("session_id", "gives_id") REFERENCES "claims"("session_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "swaps" ADD CONSTRAINT "swaps_session_id_wants_id_fkey" FOREIGN KEY ("session_id", "wants_id") REFERENCES "claims"("session_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "walks" ADD CONSTRAINT "walks_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "walks" ADD CONSTRAINT "walks_club_id_from_code_fkey" FOREIGN KEY ("club_id", "from_code") REFERENCES "places"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "walks" ADD CONSTRAINT "walks_club_id_to_code_fkey" FOREIGN KEY ("club_id", "to_code") REFERENCES "places"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- What must never be, whoever writes.
ALTER TABLE "bookings"
  ADD CONSTRAINT "bookings_state_known" CHECK ("state" IN ('draft', 'open', 'locked', 'running', 'finished', 'cancelled')),
  ADD CONSTRAINT "bookings_figures_sane" CHECK (least("pick_up_ms", "hand_in_ms") >= 0);

ALTER TABLE "duties"
  ADD CONSTRAINT "duties_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40),
  ADD CONSTRAINT "duties_kind_known" CHECK ("kind" IN ('signalling', 'yard', 'marshal', 'other')),
  ADD CONSTRAINT "duties_end_after_start" CHECK ("ends_at" > "starts_at");

-- half-open: one may start at the instant at which the other ends. Checked at the end of each statement, so that one
-- statement may trade two claims.
ALTER TABLE "claims"
  ADD CONSTRAINT "claims_of_one_thing" CHECK (num_nonnulls("train_id", "duty_id") = 1),
  ADD CONSTRAINT "claims_handset_drives_a_train" CHECK ("handset_code" IS NULL OR "train_id" IS NOT NULL),
  ADD CONSTRAINT "claims_times_in_order" CHECK ("from_at" < "until_at" AND "until_at" <= "free_at"),
  ADD CONSTRAINT "claims_member_in_one_place" EXCLUDE USING gist
    ("club_id" WITH =, "member_code" WITH =, tstzrange("from_at", "free_at", '[)') WITH &&) DEFERRABLE INITIALLY IMMEDIATE,
  ADD CONSTRAINT "claims_handset_in_one_pair_of_hands" EXCLUDE USING gist
    ("club_id" WITH =, "handset_code" WITH =, tstzrange("from_at", "until_at", '[)') WITH &&)
    WHERE ("handset_code" IS NOT NULL) DEFERRABLE INITIALLY IMMEDIATE;

ALTER TABLE "queue_places" ADD CONSTRAINT "queue_places_for_one_thing" CHECK (num_nonnulls("train_id", "duty_id") = 1);

ALTER TABLE "swaps" ADD CONSTRAINT "swaps_of_two" CHECK ("gives_id" <> "wants_id");

ALTER TABLE "walks"
  ADD CONSTRAINT "walks_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40),
  ADD CONSTRAINT "walks_join_two_places" CHECK ("from_code" <> "to_code"),
  ADD CONSTRAINT "walks_time_sane" CHECK ("seconds" BETWEEN 0 AND 86400);

ALTER TABLE "places" ADD CONSTRAINT "places_position_whole" CHECK (num_nulls("x_mm", "y_mm") IN (0, 2));

CREATE TRIGGER "bookings_count_change" BEFORE UPDATE ON "bookings" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "duties_count_change" BEFORE UPDATE ON "duties" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "claims_count_change" BEFORE UPDATE ON "claims" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "walks_count_change" BEFORE UPDATE ON "walks" FOR EACH ROW EXECUTE FUNCTION count_change();

-- Claims rest on the hours, clock and trains of a night: from its opening on they stay as they are. RF002 is our own error
-- code; its message is a sentence for people.
CREATE FUNCTION night_is_held(uuid) RETURNS boolean LANGUAGE sql STABLE AS $$
  SELECT EXISTS (SELECT FROM bookings WHERE session_id = $1 AND state NOT IN ('draft', 'cancelled'))
$$;

CREATE FUNCTION refuse_change_of_held_session() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF night_is_held(OLD.id) OR (TG_OP = 'DELETE' AND EXISTS (SELECT FROM claims WHERE session_id = OLD.id)) THEN
    RAISE EXCEPTION 'The night % is booked, and members rely on its times.', OLD.code USING ERRCODE = 'RF002';
  END IF;
  RETURN coalesce(NEW, OLD);
END $$;
CREATE TRIGGER "sessions_stay_removed" BEFORE DELETE ON "sessions" FOR EACH ROW EXECUTE FUNCTION refuse_change_of_held_session();
CREATE TRIGGER "sessions_stay_timed" BEFORE UPDATE OF "clock_ratio" ON "sessions" FOR EACH ROW
  WHEN (OLD."clock_ratio" IS DISTINCT FROM NEW."clock_ratio") EXECUTE FUNCTION refuse_change_of_held_session();

-- at the end, as slots are stored anew when their session changes; a renamed timetable comes along by cascade
CREATE FUNCTION refuse_change_of_held_slot() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF night_is_held(OLD.session_id) AND NOT EXISTS (
    SELECT FROM slots s WHERE s.session_id = OLD.session_id AND s.code = OLD.code
      AND (s.starts_at, s.ends_at, s.layout_start_s) = (OLD.starts_at, OLD.ends_at, OLD.layout_start_s)
      AND ((s.timetable_code, s.timetable_version) = (OLD.timetable_code, OLD.timetable_version)
        OR NOT EXISTS (SELECT FROM timetable_versions v WHERE v.club_id = OLD.club_id
          AND v.timetable_code = OLD.timetable_code AND v.number = OLD.timetable_version))
  ) THEN
    RAISE EXCEPTION 'Slot % belongs to a night that is booked, and members rely on its times.', OLD.code USING ERRCODE = 'RF002';
  END IF;
  RETURN NULL;
END $$;
CREATE CONSTRAINT TRIGGER "slots_stay_held" AFTER UPDATE OR DELETE ON "slots" DEFERRABLE INITIALLY DEFERRED
  FOR EACH ROW EXECUTE FUNCTION refuse_change_of_held_slot();

CREATE FUNCTION refuse_change_of_claimed_duty() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  holder text;
BEGIN
  SELECT member_code INTO holder FROM claims WHERE session_id = OLD.session_id AND duty_id = OLD.id;
  IF holder IS NOT NULL THEN
    RAISE EXCEPTION 'Member % has the duty %.', holder, OLD.code USING ERRCODE = 'RF002';
  END IF;
  RETURN coalesce(NEW, OLD);
END $$;
CREATE TRIGGER "duties_stay_removed" BEFORE DELETE ON "duties" FOR EACH ROW EXECUTE FUNCTION refuse_change_of_claimed_duty();
CREATE TRIGGER "duties_stay_timed" BEFORE UPDATE ON "duties" FOR EACH ROW
  WHEN ((OLD."starts_at", OLD."ends_at") IS DISTINCT FROM (NEW."starts_at", NEW."ends_at")) EXECUTE FUNCTION refuse_change_of_claimed_duty();

-- Arguments: what to call the record, the column of claims that names it.
CREATE FUNCTION refuse_removal_of_claimed() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  claimed bigint;
BEGIN
  EXECUTE format('SELECT count(*) FROM claims WHERE club_id = $1 AND %I = $2', TG_ARGV[1]) INTO claimed USING OLD.club_id, OLD.code;
  IF claimed > 0 THEN
    RAISE EXCEPTION '% % is in % of a night.', TG_ARGV[0], OLD.code,
      CASE claimed WHEN 1 THEN 'a claim' ELSE claimed || ' claims' END USING ERRCODE = 'RF002';
  END IF;
  RETURN OLD;
END $$;
CREATE TRIGGER "members_stay_claimed" BEFORE DELETE ON "members" FOR EACH ROW EXECUTE FUNCTION refuse_removal_of_claimed('Member', 'member_code');
CREATE TRIGGER "handsets_stay_claimed" BEFORE DELETE ON "handsets" FOR EACH ROW EXECUTE FUNCTION refuse_removal_of_claimed('Handset', 'handset_code');
