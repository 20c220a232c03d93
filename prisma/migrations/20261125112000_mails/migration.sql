CREATE TABLE "mails" (
    "id" UUID NOT NULL,
    "club_id" UUID,
    "key" TEXT NOT NULL,
    "to_address" TEXT NOT NULL,
    "template" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "text" TEXT,
    "state" TEXT NOT NULL DEFAULT 'waiting',
    "attempts" INTEGER NOT NULL DEFAULT 0,
    "error" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "sent_at" TIMESTAMPTZ(3),

    CONSTRAINT "mails_pkey" PRIMARY KEY ("id")
);

CREATE UNIQUE INDEX "mails_key_key" ON "mails"("key");

CREATE INDEX "mails_club_id_id_idx" ON "mails"("club_id", "id");

ALTER TABLE "mails" ADD CONSTRAINT "mails_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE CASCADE ON UPDATE CASCADE;

ALTER TABLE "mails"
  ADD CONSTRAINT "mails_state_known" CHECK ("state" IN ('waiting', 'sending', 'sent', 'failed')),
  ADD CONSTRAINT "mails_sent_at_when_sent" CHECK (("state" = 'sent') = ("sent_at" IS NOT NULL)),
  ADD CONSTRAINT "mails_text_until_sent" CHECK ("state" NOT IN ('waiting', 'sending') OR "text" IS NOT NULL);
