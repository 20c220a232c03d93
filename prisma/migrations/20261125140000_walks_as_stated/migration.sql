-- A member is held from the start of a claim to its end, and no longer: how long they then walk is stated by the club, and
-- may be next to nothing. Whether there is time for it is looked at with the member's row held.
ALTER TABLE "claims"
  DROP CONSTRAINT "claims_times_in_order",
  DROP CONSTRAINT "claims_member_in_one_place",
  DROP COLUMN "free_at",
  ADD CONSTRAINT "claims_times_in_order" CHECK ("from_at" < "until_at"),
  ADD CONSTRAINT "claims_member_in_one_place" EXCLUDE USING gist
    ("club_id" WITH =, "member_code" WITH =, tstzrange("from_at", "until_at", '[)') WITH &&) DEFERRABLE INITIALLY IMMEDIATE;
