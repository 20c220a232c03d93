-- Accounts: people, who they are in which club, how they get in, and links that work once. Tokens are kept as hashes.

-- AlterTable
ALTER TABLE "members" ADD COLUMN     "roles" TEXT[] DEFAULT ARRAY[]::TEXT[];

-- CreateTable
CREATE TABLE "people" (
    "id" UUID NOT NULL,
    "email" TEXT,
    "name" TEXT NOT NULL,
    "password_hash" TEXT,
    "demo" BOOLEAN NOT NULL DEFAULT false,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "erased_at" TIMESTAMPTZ(3),

    CONSTRAINT "people_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "memberships" (
    "club_id" UUID NOT NULL,
    "member_code" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "memberships_pkey" PRIMARY KEY ("club_id","member_code")
);

-- CreateTable
CREATE TABLE "sign_ins" (
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "token_hash" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "last_seen_at" TIMESTAMPTZ(3) NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "sign_ins_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "access_tokens" (
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "scope" TEXT NOT NULL,
    "club_id" UUID,
    "token_hash" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "last_used_at" TIMESTAMPTZ(3),

    CONSTRAINT "access_tokens_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "one_time_links" (
    "id" UUID NOT NULL,
    "purpose" TEXT NOT NULL,
    "token_hash" TEXT NOT NULL,
    "club_id" UUID,
    "member_code" TEXT,
    "person_id" UUID,
    "email" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "one_time_links_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "guesses" (
    "subject" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "last_at" TIMESTAMPTZ(3) NOT NULL,
    "next_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "guesses_pkey" PRIMARY KEY ("subject")
);

-- CreateIndex
CREATE UNIQUE INDEX "people_email_key" ON "people"("email");

-- CreateIndex
CREATE INDEX "memberships_person_id_idx" ON "memberships"("person_id");

-- CreateIndex
CREATE UNIQUE INDEX "memberships_one_a_person" ON "memberships"("club_id", "person_id");

-- CreateIndex
CREATE UNIQUE INDEX "sign_ins_token_hash_key" ON "sign_ins"("token_hash");

-- CreateIndex
CREATE INDEX "sign_ins_person_id_idx" ON "sign_ins"("person_id");

-- CreateIndex
CREATE INDEX "sign_ins_expires_at_idx" ON "sign_ins"("expires_at");

-- CreateIndex
CREATE UNIQUE INDEX "access_tokens_token_hash_key" ON "access_tokens"("token_hash");

-- CreateIndex
CREATE INDEX "access_tokens_person_id_idx" ON "access_tokens"("person_id");

-- CreateIndex
CREATE INDEX "access_tokens_club_id_idx" ON "access_tokens"("club_id");

-- CreateIndex
CREATE UNIQUE INDEX "one_time_links_token_hash_key" ON "one_time_links"("token_hash");

-- CreateIndex
CREATE INDEX "one_time_links_person_id_idx" ON "one_time_links"("person_id");

-- CreateIndex
CREATE INDEX "one_time_links_expires_at_idx" ON "one_time_links"("expires_at");

-- CreateIndex
CREATE UNIQUE INDEX "one_time_links_one_a_member" ON "one_time_links"("club_id", "member_code");

-- CreateIndex
CREATE INDEX "guesses_last_at_idx" ON "guesses"("last_at");

-- AddForeignKey
ALTER TABLE "memberships" ADD CONSTRAINT "memberships_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "memberships" ADD CONSTRAINT "memberships_club_id_member_code_fkey" FOREIGN KEY ("club_id", "member_code") REFERENCES "members"("club_id", "code") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "memberships" ADD CONSTRAINT "memberships_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sign_ins" ADD CONSTRAINT "sign_ins_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "access_tokens" ADD CONSTRAINT "access_tokens_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "access_tokens" ADD CONSTRAINT "access_tokens_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "one_time_links" ADD CONSTRAINT "one_time_links_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "one_time_links" ADD CONSTRAINT "one_time_links_club_id_member_code_fkey" FOREIGN KEY ("club_id", "member_code") REFERENCES "members"("club_id", "code") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "one_time_links" ADD CONSTRAINT "one_time_links_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE CASCADE ON UPDATE CASCADE;

ALTER TABLE "members" ADD CONSTRAINT "members_roles_check"
  CHECK ("roles" IS NOT NULL AND "roles" <@ ARRAY['secretary', 'layout owner', 'timetable clerk', 'session marshal']);
ALTER TABLE "people" ADD CONSTRAINT "people_email_check" CHECK ("email" = lower("email"));
ALTER TABLE "people" ADD CONSTRAINT "people_erased_check"
  CHECK ("erased_at" IS NULL OR ("email" IS NULL AND "password_hash" IS NULL));
ALTER TABLE "access_tokens" ADD CONSTRAINT "access_tokens_scope_check" CHECK ("scope" IN ('read', 'write'));
ALTER TABLE "one_time_links" ADD CONSTRAINT "one_time_links_purpose_check" CHECK (
  CASE "purpose"
    WHEN 'invitation' THEN "club_id" IS NOT NULL AND "member_code" IS NOT NULL AND "email" IS NOT NULL
    WHEN 'reset' THEN "person_id" IS NOT NULL AND "club_id" IS NULL
    WHEN 'first-secretary' THEN "person_id" IS NULL AND "club_id" IS NULL
    ELSE false
  END);

-- A club that had a secretary who can sign in keeps one, as nobody else could give the role again. Looked at in the end,
-- so that the role may pass to another in the same transaction; the lock makes two who go at once go in turn.
-- RF004 is our own error code.
CREATE FUNCTION keep_a_secretary() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM pg_advisory_xact_lock(hashtextextended('secretaries of ' || OLD.club_id, 0));
  IF EXISTS (SELECT FROM clubs WHERE id = OLD.club_id) AND NOT EXISTS (
    SELECT FROM members
    JOIN memberships ON memberships.club_id = members.club_id AND memberships.member_code = members.code
    WHERE members.club_id = OLD.club_id AND 'secretary' = ANY (members.roles)
  ) THEN
    RAISE EXCEPTION 'the club would be left without a secretary who can sign in' USING ERRCODE = 'RF004';
  END IF;
  RETURN NULL;
END $$;

CREATE CONSTRAINT TRIGGER "members_keep_a_secretary" AFTER UPDATE OF "roles" ON "members"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW
  WHEN ('secretary' = ANY (OLD."roles") AND NOT 'secretary' = ANY (NEW."roles"))
  EXECUTE FUNCTION keep_a_secretary();
CREATE CONSTRAINT TRIGGER "memberships_keep_a_secretary" AFTER DELETE ON "memberships"
  DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION keep_a_secretary();
