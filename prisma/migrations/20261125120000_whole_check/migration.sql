-- what the whole check asks of the railway; what is there already gets the usual figures, new records must say

ALTER TABLE "sections" ADD COLUMN "return_loop" BOOLEAN NOT NULL DEFAULT false;
ALTER TABLE "sections" ALTER COLUMN "return_loop" DROP DEFAULT;

ALTER TABLE "command_systems" ADD COLUMN "short_address_most" INTEGER NOT NULL DEFAULT 127;
ALTER TABLE "command_systems" ALTER COLUMN "short_address_most" DROP DEFAULT,
  ADD CONSTRAINT "command_systems_short_address_sane" CHECK ("short_address_most" BETWEEN 1 AND 127);

ALTER TABLE "supplies" ADD COLUMN "source_ohm" DOUBLE PRECISION NOT NULL DEFAULT 0.1;
ALTER TABLE "supplies" ALTER COLUMN "source_ohm" DROP DEFAULT,
  ADD CONSTRAINT "supplies_source_sane" CHECK ("source_ohm" >= 0 AND "source_ohm" <= 10);

-- the wiring of a district is known whole or not at all
ALTER TABLE "districts" ADD COLUMN "wire_conductor" TEXT,
  ADD COLUMN "wire_length_mm" INTEGER,
  ADD COLUMN "wire_temperature_c" DOUBLE PRECISION,
  ADD CONSTRAINT "districts_wiring_whole" CHECK (num_nulls("wire_conductor", "wire_length_mm", "wire_temperature_c") IN (0, 3)),
  ADD CONSTRAINT "districts_wiring_sane" CHECK ("wire_length_mm" > 0 AND "wire_temperature_c" BETWEEN -40 AND 90);

ALTER TABLE "clubs" ADD COLUMN "inrush_ms" INTEGER NOT NULL DEFAULT 200,
  ADD COLUMN "fault_margin" DOUBLE PRECISION NOT NULL DEFAULT 2,
  ADD COLUMN "drop_share" DOUBLE PRECISION NOT NULL DEFAULT 0.05,
  ADD COLUMN "busy_share" DOUBLE PRECISION NOT NULL DEFAULT 0.75,
  ADD COLUMN "walking_detour" DOUBLE PRECISION NOT NULL DEFAULT 1.4,
  ADD COLUMN "walking_mm_per_second" INTEGER NOT NULL DEFAULT 1000;
ALTER TABLE "clubs" ALTER COLUMN "inrush_ms" DROP DEFAULT,
  ALTER COLUMN "fault_margin" DROP DEFAULT,
  ALTER COLUMN "drop_share" DROP DEFAULT,
  ALTER COLUMN "busy_share" DROP DEFAULT,
  ALTER COLUMN "walking_detour" DROP DEFAULT,
  ALTER COLUMN "walking_mm_per_second" DROP DEFAULT,
  ADD CONSTRAINT "clubs_policy_of_check_sane" CHECK ("inrush_ms" >= 0 AND "fault_margin" >= 1 AND "drop_share" > 0 AND "drop_share" < 1
    AND "busy_share" > 0 AND "busy_share" <= 1 AND "walking_detour" >= 1 AND "walking_mm_per_second" > 0);

ALTER TABLE "sessions" DROP CONSTRAINT "sessions_policy_whole";
ALTER TABLE "sessions" ADD COLUMN "inrush_ms" INTEGER,
  ADD COLUMN "fault_margin" DOUBLE PRECISION,
  ADD COLUMN "drop_share" DOUBLE PRECISION,
  ADD COLUMN "busy_share" DOUBLE PRECISION,
  ADD COLUMN "walking_detour" DOUBLE PRECISION,
  ADD COLUMN "walking_mm_per_second" INTEGER;
UPDATE "sessions" SET "inrush_ms" = 200, "fault_margin" = 2, "drop_share" = 0.05, "busy_share" = 0.75, "walking_detour" = 1.4,
  "walking_mm_per_second" = 1000
  WHERE "set_up_ms" IS NOT NULL;
-- what deferred constraints wait for is done before the table changes once more
SET CONSTRAINTS ALL IMMEDIATE;
ALTER TABLE "sessions"
  ADD CONSTRAINT "sessions_policy_whole" CHECK (num_nulls("set_up_ms", "release_ms", "release_dwell_ms", "pick_up_ms", "hand_in_ms", "reserve",
    "inrush_ms", "fault_margin", "drop_share", "busy_share", "walking_detour", "walking_mm_per_second") IN (0, 12)),
  ADD CONSTRAINT "sessions_policy_of_check_sane" CHECK ("inrush_ms" >= 0 AND "fault_margin" >= 1 AND "drop_share" > 0 AND "drop_share" < 1
    AND "busy_share" > 0 AND "busy_share" <= 1 AND "walking_detour" >= 1 AND "walking_mm_per_second" > 0);
