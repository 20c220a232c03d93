-- needed by the exclusion constraint on slots (an identifier and a range in one index)
CREATE EXTENSION IF NOT EXISTS btree_gist;

-- AlterTable
-- clubs that are here already get H0 and the usual policy; new ones must say
ALTER TABLE "clubs" ADD COLUMN     "hand_in_ms" INTEGER NOT NULL DEFAULT 30000,
ADD COLUMN     "note" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "pick_up_ms" INTEGER NOT NULL DEFAULT 60000,
ADD COLUMN     "release_dwell_ms" INTEGER NOT NULL DEFAULT 30000,
ADD COLUMN     "release_ms" INTEGER NOT NULL DEFAULT 5000,
ADD COLUMN     "reserve" DOUBLE PRECISION NOT NULL DEFAULT 0.2,
ADD COLUMN     "scale" DOUBLE PRECISION NOT NULL DEFAULT 87,
ADD COLUMN     "set_up_ms" INTEGER NOT NULL DEFAULT 5000,
ALTER COLUMN "updated_at" SET DEFAULT CURRENT_TIMESTAMP;
ALTER TABLE "clubs" ALTER COLUMN "hand_in_ms" DROP DEFAULT,
ALTER COLUMN "pick_up_ms" DROP DEFAULT,
ALTER COLUMN "release_dwell_ms" DROP DEFAULT,
ALTER COLUMN "release_ms" DROP DEFAULT,
ALTER COLUMN "reserve" DROP DEFAULT,
ALTER COLUMN "scale" DROP DEFAULT,
ALTER COLUMN "set_up_ms" DROP DEFAULT;

-- CreateTable
CREATE TABLE "areas" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "areas_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "places" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "places_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "lines" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "lines_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "line_stops" (
    "club_id" UUID NOT NULL,
    "line_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "place_code" TEXT NOT NULL,
    "at_mm" INTEGER NOT NULL,

    CONSTRAINT "line_stops_pkey" PRIMARY KEY ("line_id","position")
);

-- CreateTable
CREATE TABLE "sections" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "area_code" TEXT NOT NULL,
    "place_code" TEXT,
    "use" TEXT NOT NULL,
    "length_mm" INTEGER NOT NULL,
    "wiring" TEXT NOT NULL,
    "changeover" BOOLEAN NOT NULL,
    "sharing" TEXT NOT NULL,
    "district_code" TEXT,
    "max_speed_kmh" DOUBLE PRECISION,
    "must_clear" BOOLEAN NOT NULL,
    "hand_staging" BOOLEAN NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "sections_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "links" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "from_code" TEXT NOT NULL,
    "to_code" TEXT NOT NULL,
    "one_way" BOOLEAN NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "links_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "command_systems" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "most_handsets" INTEGER,
    "most_addresses" INTEGER,
    "long_address_most" INTEGER NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "command_systems_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "supplies" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "command_system_code" TEXT NOT NULL,
    "rating_ma" INTEGER NOT NULL,
    "accessory_ma" INTEGER NOT NULL,
    "volts" DOUBLE PRECISION NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "supplies_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "districts" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "supply_code" TEXT NOT NULL,
    "breaker_ma" INTEGER NOT NULL,
    "trip_delay_ms" INTEGER NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "districts_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "controllers" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "place_code" TEXT,
    "transformer_ma" INTEGER NOT NULL,
    "accessory_ma" INTEGER NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "controllers_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "controller_outputs" (
    "club_id" UUID NOT NULL,
    "controller_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "rating_ma" INTEGER NOT NULL,

    CONSTRAINT "controller_outputs_pkey" PRIMARY KEY ("club_id","code")
);

-- CreateTable
CREATE TABLE "selectors" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "section_code" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "selectors_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "selector_outputs" (
    "club_id" UUID NOT NULL,
    "selector_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "output_code" TEXT NOT NULL,

    CONSTRAINT "selector_outputs_pkey" PRIMARY KEY ("selector_id","output_code")
);

-- CreateTable
CREATE TABLE "locomotives" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "length_mm" INTEGER NOT NULL,
    "running_ma" INTEGER NOT NULL,
    "running_source" TEXT NOT NULL,
    "standing_ma" INTEGER NOT NULL,
    "standing_source" TEXT NOT NULL,
    "stall_ma" INTEGER NOT NULL,
    "stall_source" TEXT NOT NULL,
    "inrush_ma" INTEGER NOT NULL,
    "inrush_source" TEXT NOT NULL,
    "max_speed_kmh" DOUBLE PRECISION,
    "owner" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "locomotives_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "decoders" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "locomotive_code" TEXT,
    "address_kind" TEXT NOT NULL,
    "address" INTEGER NOT NULL,
    "analog_allowed" BOOLEAN NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "decoders_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "rakes" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "length_mm" INTEGER NOT NULL,
    "vehicles" INTEGER NOT NULL,
    "lighting_ma" INTEGER NOT NULL,
    "lighting_source" TEXT NOT NULL,
    "inrush_ma" INTEGER NOT NULL,
    "inrush_source" TEXT NOT NULL,
    "owner" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "rakes_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "handsets" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "command_system_code" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "battery_minutes" INTEGER,
    "state" TEXT NOT NULL,
    "owner" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "handsets_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "handset_places" (
    "club_id" UUID NOT NULL,
    "handset_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "place_code" TEXT NOT NULL,

    CONSTRAINT "handset_places_pkey" PRIMARY KEY ("handset_id","place_code")
);

-- CreateTable
CREATE TABLE "members" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "passed_for" TEXT[],
    "junior" BOOLEAN NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "members_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "timetables" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "timetables_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "timetable_versions" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "timetable_code" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "timetable_versions_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "trains" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "version_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "priority" INTEGER NOT NULL,
    "earlier_minutes" DOUBLE PRECISION NOT NULL,
    "later_minutes" DOUBLE PRECISION NOT NULL,
    "length_mm" INTEGER,
    "placed_s" INTEGER,
    "removed_s" INTEGER,
    "requires" TEXT[],
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "trains_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "path_entries" (
    "club_id" UUID NOT NULL,
    "train_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "section_code" TEXT NOT NULL,
    "arrive_s" INTEGER,
    "depart_s" INTEGER,

    CONSTRAINT "path_entries_pkey" PRIMARY KEY ("train_id","position")
);

-- CreateTable
CREATE TABLE "train_locomotives" (
    "club_id" UUID NOT NULL,
    "train_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "locomotive_code" TEXT NOT NULL,
    "standing" TEXT NOT NULL,

    CONSTRAINT "train_locomotives_pkey" PRIMARY KEY ("train_id","locomotive_code")
);

-- CreateTable
CREATE TABLE "train_rakes" (
    "club_id" UUID NOT NULL,
    "train_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "rake_code" TEXT NOT NULL,

    CONSTRAINT "train_rakes_pkey" PRIMARY KEY ("train_id","rake_code")
);

-- CreateTable
CREATE TABLE "sessions" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "clock_ratio" DOUBLE PRECISION NOT NULL,
    "set_up_ms" INTEGER,
    "release_ms" INTEGER,
    "release_dwell_ms" INTEGER,
    "pick_up_ms" INTEGER,
    "hand_in_ms" INTEGER,
    "reserve" DOUBLE PRECISION,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "sessions_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "session_areas" (
    "club_id" UUID NOT NULL,
    "session_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "area_code" TEXT NOT NULL,
    "control" TEXT NOT NULL,

    CONSTRAINT "session_areas_pkey" PRIMARY KEY ("session_id","area_code")
);

-- CreateTable
CREATE TABLE "slots" (
    "club_id" UUID NOT NULL,
    "session_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "starts_at" TIMESTAMPTZ(3) NOT NULL,
    "ends_at" TIMESTAMPTZ(3) NOT NULL,
    "layout_start_s" INTEGER NOT NULL,
    "timetable_code" TEXT NOT NULL,
    "timetable_version" INTEGER NOT NULL,

    CONSTRAINT "slots_pkey" PRIMARY KEY ("session_id","code")
);

-- CreateIndex
CREATE UNIQUE INDEX "areas_club_id_code_key" ON "areas"("club_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "places_club_id_code_key" ON "places"("club_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "lines_club_id_code_key" ON "lines"("club_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "lines_club_id_id_key" ON "lines"("club_id", "id");

-- CreateIndex
CREATE INDEX "line_stops_club_id_place_code_idx" ON "line_stops"("club_id", "place_code");

-- CreateIndex
CREATE INDEX "sections_club_id_area_code_idx" ON "sections"("club_id", "area_code");

-- CreateIndex
CREATE INDEX "sections_club_id_place_code_idx" ON "sections"("club_id", "place_code");

-- CreateIndex
CREATE INDEX "sections_club_id_district_code_idx" ON "sections"("club_id", "district_code");

-- CreateIndex
CREATE UNIQUE INDEX "sections_club_id_code_key" ON "sections"("club_id", "code");

-- CreateIndex
CREATE INDEX "links_club_id_from_code_idx" ON "links"("club_id", "from_code");

-- CreateIndex
CREATE INDEX "links_club_id_to_code_idx" ON "links"("club_id", "to_code");

-- CreateIndex
CREATE UNIQUE INDEX "links_club_id_code_key" ON "links"("club_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "command_systems_club_id_code_key" ON "command_systems"("club_id", "code");

-- CreateIndex
CREATE INDEX "supplies_club_id_command_system_code_idx" ON "supplies"("club_id", "command_system_code");

-- CreateIndex
CREATE UNIQUE INDEX "supplies_club_id_code_key" ON "supplies"("club_id", "code");

-- CreateIndex
CREATE INDEX "districts_club_id_supply_code_idx" ON "districts"("club_id", "supply_code");

-- CreateIndex
CREATE UNIQUE INDEX "districts_club_id_code_key" ON "districts"("club_id", "code");

-- CreateIndex
CREATE INDEX "controllers_club_id_place_code_idx" ON "controllers"("club_id", "place_code");

-- CreateIndex
CREATE UNIQUE INDEX "controllers_club_id_code_key" ON "controllers"("club_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "controllers_club_id_id_key" ON "controllers"("club_id", "id");

-- CreateIndex
CREATE INDEX "controller_outputs_club_id_controller_id_idx" ON "controller_outputs"("club_id", "controller_id");

-- CreateIndex
CREATE UNIQUE INDEX "selectors_club_id_code_key" ON "selectors"("club_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "selectors_club_id_id_key" ON "selectors"("club_id", "id");

-- CreateIndex
-- deferred: records that are stored together may trade places
ALTER TABLE "selectors" ADD CONSTRAINT "selectors_one_a_section" UNIQUE ("club_id", "section_code") DEFERRABLE INITIALLY DEFERRED;

-- CreateIndex
CREATE INDEX "selector_outputs_club_id_output_code_idx" ON "selector_outputs"("club_id", "output_code");

-- CreateIndex
CREATE UNIQUE INDEX "locomotives_club_id_code_key" ON "locomotives"("club_id", "code");

-- CreateIndex
CREATE INDEX "decoders_club_id_address_idx" ON "decoders"("club_id", "address");

-- CreateIndex
CREATE UNIQUE INDEX "decoders_club_id_code_key" ON "decoders"("club_id", "code");

-- CreateIndex
-- deferred: records that are stored together may trade places
ALTER TABLE "decoders" ADD CONSTRAINT "decoders_one_a_locomotive" UNIQUE ("club_id", "locomotive_code") DEFERRABLE INITIALLY DEFERRED;

-- CreateIndex
CREATE UNIQUE INDEX "rakes_club_id_code_key" ON "rakes"("club_id", "code");

-- CreateIndex
CREATE INDEX "handsets_club_id_command_system_code_idx" ON "handsets"("club_id", "command_system_code");

-- CreateIndex
CREATE UNIQUE INDEX "handsets_club_id_code_key" ON "handsets"("club_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "handsets_club_id_id_key" ON "handsets"("club_id", "id");

-- CreateIndex
CREATE INDEX "handset_places_club_id_place_code_idx" ON "handset_places"("club_id", "place_code");

-- CreateIndex
CREATE UNIQUE INDEX "members_club_id_code_key" ON "members"("club_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "timetables_club_id_code_key" ON "timetables"("club_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "timetable_versions_club_id_timetable_code_number_key" ON "timetable_versions"("club_id", "timetable_code", "number");

-- CreateIndex
CREATE UNIQUE INDEX "timetable_versions_club_id_id_key" ON "timetable_versions"("club_id", "id");

-- CreateIndex
CREATE UNIQUE INDEX "trains_version_id_code_key" ON "trains"("version_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "trains_club_id_id_key" ON "trains"("club_id", "id");

-- CreateIndex
CREATE INDEX "path_entries_club_id_section_code_idx" ON "path_entries"("club_id", "section_code");

-- CreateIndex
CREATE INDEX "train_locomotives_club_id_locomotive_code_idx" ON "train_locomotives"("club_id", "locomotive_code");

-- CreateIndex
CREATE INDEX "train_rakes_club_id_rake_code_idx" ON "train_rakes"("club_id", "rake_code");

-- CreateIndex
CREATE UNIQUE INDEX "sessions_club_id_code_key" ON "sessions"("club_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "sessions_club_id_id_key" ON "sessions"("club_id", "id");

-- CreateIndex
CREATE INDEX "session_areas_club_id_area_code_idx" ON "session_areas"("club_id", "area_code");

-- CreateIndex
CREATE INDEX "slots_club_id_timetable_code_timetable_version_idx" ON "slots"("club_id", "timetable_code", "timetable_version");

-- CreateIndex
CREATE INDEX "slots_club_id_starts_at_idx" ON "slots"("club_id", "starts_at");

-- AddForeignKey
ALTER TABLE "areas" ADD CONSTRAINT "areas_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "places" ADD CONSTRAINT "places_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "lines" ADD CONSTRAINT "lines_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "line_stops" ADD CONSTRAINT "line_stops_club_id_line_id_fkey" FOREIGN KEY ("club_id", "line_id") REFERENCES "lines"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "line_stops" ADD CONSTRAINT "line_stops_club_id_place_code_fkey" FOREIGN KEY ("club_id", "place_code") REFERENCES "places"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sections" ADD CONSTRAINT "sections_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sections" ADD CONSTRAINT "sections_club_id_area_code_fkey" FOREIGN KEY ("club_id", "area_code") REFERENCES "areas"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sections" ADD CONSTRAINT "sections_club_id_place_code_fkey" FOREIGN KEY ("club_id", "place_code") REFERENCES "places"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sections" ADD CONSTRAINT "sections_club_id_district_code_fkey" FOREIGN KEY ("club_id", "district_code") REFERENCES "districts"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "links" ADD CONSTRAINT "links_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "links" ADD CONSTRAINT "links_club_id_from_code_fkey" FOREIGN KEY ("club_id", "from_code") REFERENCES "sections"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "links" ADD CONSTRAINT "links_club_id_to_code_fkey" FOREIGN KEY ("club_id", "to_code") REFERENCES "sections"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "command_systems" ADD CONSTRAINT "command_systems_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "supplies" ADD CONSTRAINT "supplies_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "supplies" ADD CONSTRAINT "supplies_club_id_command_system_code_fkey" FOREIGN KEY ("club_id", "command_system_code") REFERENCES "command_systems"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "districts" ADD CONSTRAINT "districts_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "districts" ADD CONSTRAINT "districts_club_id_supply_code_fkey" FOREIGN KEY ("club_id", "supply_code") REFERENCES "supplies"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "controllers" ADD CONSTRAINT "controllers_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "controllers" ADD CONSTRAINT "controllers_club_id_place_code_fkey" FOREIGN KEY ("club_id", "place_code") REFERENCES "places"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "controller_outputs" ADD CONSTRAINT "controller_outputs_club_id_controller_id_fkey" FOREIGN KEY ("club_id", "controller_id") REFERENCES "controllers"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "selectors" ADD CONSTRAINT "selectors_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "selectors" ADD CONSTRAINT "selectors_club_id_section_code_fkey" FOREIGN KEY ("club_id", "section_code") REFERENCES "sections"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "selector_outputs" ADD CONSTRAINT "selector_outputs_club_id_selector_id_fkey" FOREIGN KEY ("club_id", "selector_id") REFERENCES "selectors"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "selector_outputs" ADD CONSTRAINT "selector_outputs_club_id_output_code_fkey" FOREIGN KEY ("club_id", "output_code") REFERENCES "controller_outputs"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "locomotives" ADD CONSTRAINT "locomotives_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "decoders" ADD CONSTRAINT "decoders_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "decoders" ADD CONSTRAINT "decoders_club_id_locomotive_code_fkey" FOREIGN KEY ("club_id", "locomotive_code") REFERENCES "locomotives"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "rakes" ADD CONSTRAINT "rakes_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "handsets" ADD CONSTRAINT "handsets_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "handsets" ADD CONSTRAINT "handsets_club_id_command_system_code_fkey" FOREIGN KEY ("club_id", "command_system_code") REFERENCES "command_systems"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "handset_places" ADD CONSTRAINT "handset_places_club_id_handset_id_fkey" FOREIGN KEY ("club_id", "handset_id") REFERENCES "handsets"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "handset_places" ADD CONSTRAINT "handset_places_club_id_place_code_fkey" FOREIGN KEY ("club_id", "place_code") REFERENCES "places"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "members" ADD CONSTRAINT "members_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "timetables" ADD CONSTRAINT "timetables_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "timetable_versions" ADD CONSTRAINT "timetable_versions_club_id_timetable_code_fkey" FOREIGN KEY ("club_id", "timetable_code") REFERENCES "timetables"("club_id", "code") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "trains" ADD CONSTRAINT "trains_club_id_version_id_fkey" FOREIGN KEY ("club_id", "version_id") REFERENCES "timetable_versions"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "path_entries" ADD CONSTRAINT "path_entries_club_id_train_id_fkey" FOREIGN KEY ("club_id", "train_id") REFERENCES "trains"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "path_entries" ADD CONSTRAINT "path_entries_club_id_section_code_fkey" FOREIGN KEY ("club_id", "section_code") REFERENCES "sections"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "train_locomotives" ADD CONSTRAINT "train_locomotives_club_id_train_id_fkey" FOREIGN KEY ("club_id", "train_id") REFERENCES "trains"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "train_locomotives" ADD CONSTRAINT "train_locomotives_club_id_locomotive_code_fkey" FOREIGN KEY ("club_id", "locomotive_code") REFERENCES "locomotives"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "train_rakes" ADD CONSTRAINT "train_rakes_club_id_train_id_fkey" FOREIGN KEY ("club_id", "train_id") REFERENCES "trains"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "train_rakes" ADD CONSTRAINT "train_rakes_club_id_rake_code_fkey" FOREIGN KEY ("club_id", "rake_code") REFERENCES "rakes"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sessions" ADD CONSTRAINT "sessions_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "session_areas" ADD CONSTRAINT "session_areas_club_id_session_id_fkey" FOREIGN KEY ("club_id", "session_id") REFERENCES "sessions"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "session_areas" ADD CONSTRAINT "session_areas_club_id_area_code_fkey" FOREIGN KEY ("club_id", "area_code") REFERENCES "areas"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "slots" ADD CONSTRAINT "slots_club_id_session_id_fkey" FOREIGN KEY ("club_id", "session_id") REFERENCES "sessions"("club_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "slots" ADD CONSTRAINT "slots_club_id_timetable_code_timetable_version_fkey" FOREIGN KEY ("club_id", "timetable_code", "timetable_version") REFERENCES "timetable_versions"("club_id", "timetable_code", "number") ON DELETE RESTRICT ON UPDATE CASCADE;

-- What must never be, whoever writes.
ALTER TABLE "clubs"
  ADD CONSTRAINT "clubs_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40),
  ADD CONSTRAINT "clubs_scale_sane" CHECK ("scale" BETWEEN 1 AND 1000),
  ADD CONSTRAINT "clubs_policy_sane" CHECK (least("set_up_ms", "release_ms", "release_dwell_ms", "pick_up_ms", "hand_in_ms") >= 0
    AND "reserve" >= 0 AND "reserve" < 1);
ALTER TABLE "areas" ADD CONSTRAINT "areas_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);
ALTER TABLE "places" ADD CONSTRAINT "places_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);
ALTER TABLE "lines" ADD CONSTRAINT "lines_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);
ALTER TABLE "sections" ADD CONSTRAINT "sections_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);
ALTER TABLE "links" ADD CONSTRAINT "links_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);
ALTER TABLE "command_systems" ADD CONSTRAINT "command_systems_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);
ALTER TABLE "supplies" ADD CONSTRAINT "supplies_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);
ALTER TABLE "districts" ADD CONSTRAINT "districts_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);
ALTER TABLE "controllers" ADD CONSTRAINT "controllers_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);
ALTER TABLE "selectors" ADD CONSTRAINT "selectors_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);
ALTER TABLE "locomotives" ADD CONSTRAINT "locomotives_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);
ALTER TABLE "decoders" ADD CONSTRAINT "decoders_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);
ALTER TABLE "rakes" ADD CONSTRAINT "rakes_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);
ALTER TABLE "handsets" ADD CONSTRAINT "handsets_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);
ALTER TABLE "members" ADD CONSTRAINT "members_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);
ALTER TABLE "timetables" ADD CONSTRAINT "timetables_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);
ALTER TABLE "trains" ADD CONSTRAINT "trains_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);
ALTER TABLE "sessions" ADD CONSTRAINT "sessions_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40);

ALTER TABLE "line_stops" ADD CONSTRAINT "line_stops_distance_sane" CHECK ("at_mm" >= 0);

ALTER TABLE "sections"
  ADD CONSTRAINT "sections_length_sane" CHECK ("length_mm" > 0),
  ADD CONSTRAINT "sections_speed_sane" CHECK ("max_speed_kmh" > 0),
  ADD CONSTRAINT "sections_use_known" CHECK ("use" IN ('line', 'platform road', 'loop', 'siding', 'staging road', 'yard')),
  ADD CONSTRAINT "sections_wiring_known" CHECK ("wiring" IN ('analog', 'digital', 'both')),
  ADD CONSTRAINT "sections_sharing_known" CHECK ("sharing" IN ('one-train', 'shared')),
  ADD CONSTRAINT "sections_changeover_needs_both" CHECK (NOT "changeover" OR "wiring" = 'both');

ALTER TABLE "links" ADD CONSTRAINT "links_join_two_sections" CHECK ("from_code" <> "to_code");

ALTER TABLE "command_systems"
  ADD CONSTRAINT "command_systems_limits_sane" CHECK ("most_handsets" > 0 AND "most_addresses" > 0),
  ADD CONSTRAINT "command_systems_long_address_sane" CHECK ("long_address_most" BETWEEN 128 AND 10239);

ALTER TABLE "supplies"
  ADD CONSTRAINT "supplies_currents_sane" CHECK ("rating_ma" > 0 AND "accessory_ma" >= 0),
  ADD CONSTRAINT "supplies_volts_sane" CHECK ("volts" > 0 AND "volts" <= 33);

ALTER TABLE "districts" ADD CONSTRAINT "districts_breaker_sane" CHECK ("breaker_ma" > 0 AND "trip_delay_ms" >= 0);

ALTER TABLE "controllers" ADD CONSTRAINT "controllers_currents_sane" CHECK ("transformer_ma" > 0 AND "accessory_ma" >= 0);

ALTER TABLE "controller_outputs"
  ADD CONSTRAINT "controller_outputs_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40),
  ADD CONSTRAINT "controller_outputs_rating_sane" CHECK ("rating_ma" > 0);

ALTER TABLE "locomotives"
  ADD CONSTRAINT "locomotives_length_sane" CHECK ("length_mm" > 0),
  ADD CONSTRAINT "locomotives_currents_sane" CHECK (least("running_ma", "standing_ma", "stall_ma", "inrush_ma") >= 0),
  ADD CONSTRAINT "locomotives_speed_sane" CHECK ("max_speed_kmh" > 0),
  ADD CONSTRAINT "locomotives_sources_known" CHECK ("running_source" IN ('measured', 'leaflet', 'rule of thumb')
    AND "standing_source" IN ('measured', 'leaflet', 'rule of thumb') AND "stall_source" IN ('measured', 'leaflet', 'rule of thumb')
    AND "inrush_source" IN ('measured', 'leaflet', 'rule of thumb'));

-- short 1 to 127, long 128 to 10239: NMRA S-9.2.1
ALTER TABLE "decoders" ADD CONSTRAINT "decoders_address_fits_kind" CHECK (("address_kind" = 'short' AND "address" BETWEEN 1 AND 127)
  OR ("address_kind" = 'long' AND "address" BETWEEN 128 AND 10239));

ALTER TABLE "rakes"
  ADD CONSTRAINT "rakes_length_sane" CHECK ("length_mm" > 0 AND "vehicles" > 0),
  ADD CONSTRAINT "rakes_currents_sane" CHECK ("lighting_ma" >= 0 AND "inrush_ma" >= 0),
  ADD CONSTRAINT "rakes_sources_known" CHECK ("lighting_source" IN ('measured', 'leaflet', 'rule of thumb')
    AND "inrush_source" IN ('measured', 'leaflet', 'rule of thumb'));

ALTER TABLE "handsets"
  ADD CONSTRAINT "handsets_battery_sane" CHECK ("battery_minutes" > 0),
  ADD CONSTRAINT "handsets_kind_known" CHECK ("kind" IN ('tethered', 'radio', 'fixed')),
  ADD CONSTRAINT "handsets_state_known" CHECK ("state" IN ('ready', 'faulty', 'away'));

ALTER TABLE "timetable_versions"
  ADD CONSTRAINT "timetable_versions_number_sane" CHECK ("number" > 0),
  ADD CONSTRAINT "timetable_versions_state_known" CHECK ("state" IN ('draft', 'issued'));

-- 99:59:59 is the last layout time that can be written
ALTER TABLE "trains"
  ADD CONSTRAINT "trains_length_sane" CHECK ("length_mm" > 0),
  ADD CONSTRAINT "trains_priority_sane" CHECK ("priority" BETWEEN 1 AND 9),
  ADD CONSTRAINT "trains_tolerance_sane" CHECK ("earlier_minutes" >= 0 AND "later_minutes" >= 0),
  ADD CONSTRAINT "trains_times_sane" CHECK ("placed_s" BETWEEN 0 AND 359999 AND "removed_s" BETWEEN 0 AND 359999);
ALTER TABLE "path_entries" ADD CONSTRAINT "path_entries_times_sane" CHECK ("arrive_s" BETWEEN 0 AND 359999 AND "depart_s" BETWEEN 0 AND 359999);
ALTER TABLE "train_locomotives" ADD CONSTRAINT "train_locomotives_standing_known" CHECK ("standing" IN ('head', 'rear'));

ALTER TABLE "sessions"
  ADD CONSTRAINT "sessions_ratio_sane" CHECK ("clock_ratio" > 0),
  ADD CONSTRAINT "sessions_policy_whole" CHECK (num_nulls("set_up_ms", "release_ms", "release_dwell_ms", "pick_up_ms", "hand_in_ms", "reserve") IN (0, 6)),
  ADD CONSTRAINT "sessions_policy_sane" CHECK (least("set_up_ms", "release_ms", "release_dwell_ms", "pick_up_ms", "hand_in_ms") >= 0
    AND "reserve" >= 0 AND "reserve" < 1);
ALTER TABLE "session_areas" ADD CONSTRAINT "session_areas_control_known" CHECK ("control" IN ('analog', 'digital'));

ALTER TABLE "slots"
  ADD CONSTRAINT "slots_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40),
  ADD CONSTRAINT "slots_end_after_start" CHECK ("ends_at" > "starts_at"),
  ADD CONSTRAINT "slots_layout_start_sane" CHECK ("layout_start_s" BETWEEN 0 AND 359999),
  -- one railway a club; deferred, so that slots stored together may trade places
  ADD CONSTRAINT "slots_one_railway" EXCLUDE USING gist ("club_id" WITH =, tstzrange("starts_at", "ends_at", '[)') WITH &&)
    DEFERRABLE INITIALLY DEFERRED;

-- Every change counts, also one that a rename elsewhere brings by cascade: the count is the record's entity tag.
CREATE FUNCTION count_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  NEW.version := OLD.version + 1;
  NEW.updated_at := now();
  RETURN NEW;
END $$;

CREATE TRIGGER "clubs_count_change" BEFORE UPDATE ON "clubs" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "areas_count_change" BEFORE UPDATE ON "areas" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "places_count_change" BEFORE UPDATE ON "places" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "lines_count_change" BEFORE UPDATE ON "lines" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "sections_count_change" BEFORE UPDATE ON "sections" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "links_count_change" BEFORE UPDATE ON "links" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "command_systems_count_change" BEFORE UPDATE ON "command_systems" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "supplies_count_change" BEFORE UPDATE ON "supplies" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "districts_count_change" BEFORE UPDATE ON "districts" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "controllers_count_change" BEFORE UPDATE ON "controllers" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "selectors_count_change" BEFORE UPDATE ON "selectors" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "locomotives_count_change" BEFORE UPDATE ON "locomotives" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "decoders_count_change" BEFORE UPDATE ON "decoders" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "rakes_count_change" BEFORE UPDATE ON "rakes" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "handsets_count_change" BEFORE UPDATE ON "handsets" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "members_count_change" BEFORE UPDATE ON "members" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "timetables_count_change" BEFORE UPDATE ON "timetables" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "timetable_versions_count_change" BEFORE UPDATE ON "timetable_versions" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "trains_count_change" BEFORE UPDATE ON "trains" FOR EACH ROW EXECUTE FUNCTION count_change();
CREATE TRIGGER "sessions_count_change" BEFORE UPDATE ON "sessions" FOR EACH ROW EXECUTE FUNCTION count_change();

-- A rename that reaches a part of a record is a change of that record. Arguments: its table, the part's column naming it.
CREATE FUNCTION count_change_of_whole() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  EXECUTE format('UPDATE %I SET version = version WHERE id = $1', TG_ARGV[0]) USING (to_jsonb(NEW) ->> TG_ARGV[1])::uuid;
  RETURN NULL;
END $$;

CREATE TRIGGER "line_stops_count_change" AFTER UPDATE OF "place_code" ON "line_stops" FOR EACH ROW WHEN (OLD."place_code" IS DISTINCT FROM NEW."place_code") EXECUTE FUNCTION count_change_of_whole('lines', 'line_id');
CREATE TRIGGER "selector_outputs_count_change" AFTER UPDATE OF "output_code" ON "selector_outputs" FOR EACH ROW WHEN (OLD."output_code" IS DISTINCT FROM NEW."output_code") EXECUTE FUNCTION count_change_of_whole('selectors', 'selector_id');
CREATE TRIGGER "handset_places_count_change" AFTER UPDATE OF "place_code" ON "handset_places" FOR EACH ROW WHEN (OLD."place_code" IS DISTINCT FROM NEW."place_code") EXECUTE FUNCTION count_change_of_whole('handsets', 'handset_id');
CREATE TRIGGER "path_entries_count_change" AFTER UPDATE OF "section_code" ON "path_entries" FOR EACH ROW WHEN (OLD."section_code" IS DISTINCT FROM NEW."section_code") EXECUTE FUNCTION count_change_of_whole('trains', 'train_id');
CREATE TRIGGER "train_locomotives_count_change" AFTER UPDATE OF "locomotive_code" ON "train_locomotives" FOR EACH ROW WHEN (OLD."locomotive_code" IS DISTINCT FROM NEW."locomotive_code") EXECUTE FUNCTION count_change_of_whole('trains', 'train_id');
CREATE TRIGGER "train_rakes_count_change" AFTER UPDATE OF "rake_code" ON "train_rakes" FOR EACH ROW WHEN (OLD."rake_code" IS DISTINCT FROM NEW."rake_code") EXECUTE FUNCTION count_change_of_whole('trains', 'train_id');
CREATE TRIGGER "session_areas_count_change" AFTER UPDATE OF "area_code" ON "session_areas" FOR EACH ROW WHEN (OLD."area_code" IS DISTINCT FROM NEW."area_code") EXECUTE FUNCTION count_change_of_whole('sessions', 'session_id');
CREATE TRIGGER "slots_count_change" AFTER UPDATE OF "timetable_code" ON "slots" FOR EACH ROW WHEN (OLD."timetable_code" IS DISTINCT FROM NEW."timetable_code") EXECUTE FUNCTION count_change_of_whole('sessions', 'session_id');
CREATE TRIGGER "slots_count_change_number" AFTER UPDATE OF "timetable_version" ON "slots" FOR EACH ROW WHEN (OLD."timetable_version" IS DISTINCT FROM NEW."timetable_version") EXECUTE FUNCTION count_change_of_whole('sessions', 'session_id');

-- An issued version stays issued, and its trains stay as they are. RF001 is our own error code. What a rename elsewhere
-- brings by cascade passes: a reference then changes to the new code, and nothing has the old one any more. So does the
-- removal of the whole version: it is gone by the time its trains are looked at.
CREATE FUNCTION refuse_reopening() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF OLD.state = 'issued' AND (NEW.state, NEW.number) IS DISTINCT FROM (OLD.state, OLD.number) THEN
    RAISE EXCEPTION 'the timetable version is issued' USING ERRCODE = 'RF001';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER "timetable_versions_stay_issued" BEFORE UPDATE ON "timetable_versions" FOR EACH ROW EXECUTE FUNCTION refuse_reopening();

-- for trains made, removed or changed; the count of changes that a renamed part brings is set inside a trigger
CREATE FUNCTION refuse_change_of_issued_trains() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF pg_trigger_depth() = 1 AND EXISTS (
    SELECT FROM (SELECT DISTINCT version_id FROM changed) c JOIN timetable_versions v ON v.id = c.version_id WHERE v.state = 'issued'
  ) THEN
    RAISE EXCEPTION 'the timetable version is issued' USING ERRCODE = 'RF001';
  END IF;
  RETURN NULL;
END $$;

-- for parts made or removed
CREATE FUNCTION refuse_change_of_issued_train_parts() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  -- one look a train, by key: as a join this would be planned as if a statement changed only a few rows
  IF EXISTS (
    SELECT FROM (SELECT DISTINCT train_id FROM changed) c
    WHERE (SELECT v.state FROM trains t JOIN timetable_versions v ON v.id = t.version_id WHERE t.id = c.train_id) = 'issued'
  ) THEN
    RAISE EXCEPTION 'the timetable version is issued' USING ERRCODE = 'RF001';
  END IF;
  RETURN NULL;
END $$;

-- for parts changed. Arguments: the column that refers, the table it refers to.
CREATE FUNCTION refuse_change_of_issued_train_references() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  refused boolean;
BEGIN
  EXECUTE format(
    'SELECT EXISTS (
      SELECT FROM before b
      WHERE (SELECT v.state FROM trains t JOIN timetable_versions v ON v.id = t.version_id WHERE t.id = b.train_id) = ''issued'' AND (
        EXISTS (SELECT FROM %2$I r WHERE r.club_id = b.club_id AND r.code = b.%1$I)
        OR NOT EXISTS (SELECT FROM after a
          WHERE a.train_id = b.train_id AND a.position = b.position AND to_jsonb(a) - %1$L = to_jsonb(b) - %1$L)))',
    TG_ARGV[0], TG_ARGV[1]) INTO refused;
  IF refused THEN
    RAISE EXCEPTION 'the timetable version is issued' USING ERRCODE = 'RF001';
  END IF;
  RETURN NULL;
END $$;

CREATE TRIGGER "trains_issued_insert" AFTER INSERT ON "trains" REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION refuse_change_of_issued_trains();
CREATE TRIGGER "trains_issued_update" AFTER UPDATE ON "trains" REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION refuse_change_of_issued_trains();
CREATE TRIGGER "trains_issued_delete" AFTER DELETE ON "trains" REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION refuse_change_of_issued_trains();
CREATE TRIGGER "path_entries_issued_insert" AFTER INSERT ON "path_entries" REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION refuse_change_of_issued_train_parts();
CREATE TRIGGER "path_entries_issued_delete" AFTER DELETE ON "path_entries" REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION refuse_change_of_issued_train_parts();
CREATE TRIGGER "path_entries_issued_update" AFTER UPDATE ON "path_entries" REFERENCING OLD TABLE AS before NEW TABLE AS after FOR EACH STATEMENT EXECUTE FUNCTION refuse_change_of_issued_train_references('section_code', 'sections');
CREATE TRIGGER "train_locomotives_issued_insert" AFTER INSERT ON "train_locomotives" REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION refuse_change_of_issued_train_parts();
CREATE TRIGGER "train_locomotives_issued_delete" AFTER DELETE ON "train_locomotives" REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION refuse_change_of_issued_train_parts();
CREATE TRIGGER "train_locomotives_issued_update" AFTER UPDATE ON "train_locomotives" REFERENCING OLD TABLE AS before NEW TABLE AS after FOR EACH STATEMENT EXECUTE FUNCTION refuse_change_of_issued_train_references('locomotive_code', 'locomotives');
CREATE TRIGGER "train_rakes_issued_insert" AFTER INSERT ON "train_rakes" REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION refuse_change_of_issued_train_parts();
CREATE TRIGGER "train_rakes_issued_delete" AFTER DELETE ON "train_rakes" REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION refuse_change_of_issued_train_parts();
CREATE TRIGGER "train_rakes_issued_update" AFTER UPDATE ON "train_rakes" REFERENCING OLD TABLE AS before NEW TABLE AS after FOR EACH STATEMENT EXECUTE FUNCTION refuse_change_of_issued_train_references('rake_code', 'rakes');
