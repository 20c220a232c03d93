-- what happened when somebody laid metal across the rails of a district
CREATE TABLE "short_tests" (
    "id" UUID NOT NULL,
    "club_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "district_code" TEXT NOT NULL,
    "tested_on" DATE NOT NULL,
    "result" TEXT NOT NULL,
    "tested_by" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "short_tests_pkey" PRIMARY KEY ("id")
);

CREATE UNIQUE INDEX "short_tests_club_id_code_key" ON "short_tests"("club_id", "code");
CREATE INDEX "short_tests_club_id_district_code_idx" ON "short_tests"("club_id", "district_code");

ALTER TABLE "short_tests" ADD CONSTRAINT "short_tests_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "short_tests" ADD CONSTRAINT "short_tests_club_id_district_code_fkey" FOREIGN KEY ("club_id", "district_code") REFERENCES "districts"("club_id", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

ALTER TABLE "short_tests"
  ADD CONSTRAINT "short_tests_code_sane" CHECK (char_length("code") BETWEEN 1 AND 40),
  ADD CONSTRAINT "short_tests_result_known" CHECK ("result" IN ('passed', 'failed'));

CREATE TRIGGER "short_tests_count_change" BEFORE UPDATE ON "short_tests" FOR EACH ROW EXECUTE FUNCTION count_change();

SELECT keep_trail('short_tests', 'short-test');
