import { afterAll, beforeAll, expect, it } from "vitest";
import { inTransaction } from "../../../src/database/transaction.ts";
import { queueingMailer } from "../../../src/mail/mailer.ts";
import { memberOf } from "../../support/actors.ts";
import { testApp } from "../../support/test-app.ts";
import { makeClub } from "../example-club.ts";

let actor = memberOf("north", "secretary");
let app: Awaited<ReturnType<typeof testApp>>;

beforeAll(async () => {
  app = await testApp({ authenticate: async () => actor });
  await makeClub(app, "north", null);
  await app.request.post("/api/clubs").send({ code: "south", name: "South", timeZone: "UTC", scale: 87 });
  const { id } = await app.prisma.club.findUniqueOrThrow({ where: { code: "north" } });
  for (let at = 0; at < 5; at++)
    await inTransaction(app.prisma, (transaction) =>
      queueingMailer.queue(transaction, {
        key: `note ${at}`,
        clubId: id,
        to: `member-${at}@club.example`,
        template: "note-to-all",
        data: { club: "North", night: `Night ${at}`, begins: "19:00", note: "Secret text", link: "http://x" },
      }),
    );
});
afterAll(() => app.close());

it("the secretary sees the club's mails, the last first, page by page, without their texts", async () => {
  const first = await app.request.get("/api/clubs/north/mails?limit=3").expect(200);
  expect(first.body.items.map(({ to }: { to: string }) => to)).toEqual([
    "member-4@club.example",
    "member-3@club.example",
    "member-2@club.example",
  ]);
  expect(first.body.items[0]).toMatchObject({ state: "waiting", template: "note-to-all", sentAt: null });
  expect(JSON.stringify(first.body)).not.toContain("Secret text");
  const { body } = await app.request
    .get("/api/clubs/north/mails")
    .query({ limit: 3, cursor: first.body.next });
  expect(body.items.map(({ subject }: { subject: string }) => subject)).toEqual([
    "Night 1: a note to all",
    "Night 0: a note to all",
  ]);
  expect(body.next).toBeNull();
});

it("those of one state alone", async () => {
  await app.prisma.mail.update({
    where: { key: "note 2" },
    data: { state: "failed", error: "No such mailbox" },
  });
  const { body } = await app.request.get("/api/clubs/north/mails?state=failed").expect(200);
  expect(body.items).toMatchObject([{ to: "member-2@club.example", error: "No such mailbox" }]);
});

it("a member without the role sees none, and another club's are not there", async () => {
  actor = memberOf("north", "member");
  await app.request.get("/api/clubs/north/mails").expect(403);
  actor = memberOf("south", "secretary");
  await app.request.get("/api/clubs/north/mails").expect(404);
  const { body } = await app.request.get("/api/clubs/south/mails").expect(200);
  expect(body.items).toEqual([]);
});
