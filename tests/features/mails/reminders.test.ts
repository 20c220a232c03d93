import { afterAll, beforeAll, expect, it } from "vitest";
import { queueReminders } from "../../../src/features/mails/reminders.ts";
import { queueingMailer } from "../../../src/mail/mailer.ts";
import { testApp } from "../../support/test-app.ts";
import { giveTrain, makeOpenNight, makePerson } from "../calendar/turns.ts";

let app: Awaited<ReturnType<typeof testApp>>;

beforeAll(async () => {
  app = await testApp();
  await makeOpenNight(app, "north", "2027-04-10");
  await makePerson(app, "north", "ada");
  await giveTrain(app, "north", "ada", new Date("2027-04-10T18:10:00Z"), new Date("2027-04-10T18:21:30Z"));
});
afterAll(() => app.close());

/** What is queued when it is this time. */
async function remindAt(now: string) {
  await queueReminders({
    database: app.prisma,
    mailer: queueingMailer,
    clock: { now: () => new Date(now) },
    publicUrl: () => "https://foreman.club.example/",
  });
  return app.prisma.mail.findMany({ orderBy: { id: "asc" } });
}

// the night begins at 19:00 in London, 18:00 UTC
it("nobody is reminded of a night that is more than a day ahead", async () => {
  expect(await remindAt("2027-04-09T17:59:00Z")).toEqual([]);
});

it("everybody with something to do is reminded within a day of it, once, by however many processes", async () => {
  const at = "2027-04-09T18:00:00Z";
  await Promise.all([remindAt(at), remindAt(at), remindAt(at)]);
  const mails = await remindAt("2027-04-10T09:00:00Z");
  expect(mails).toHaveLength(1);
  expect(mails[0]).toMatchObject({
    toAddress: "ada.north@club.example",
    template: "reminder",
    subject: "The night: Saturday 10 April 2027, 19:00",
  });
  expect(mails[0]?.text).toContain("  19:10 Train ");
  expect(mails[0]?.text).toContain("https://foreman.club.example/clubs/north/my-evening/night");
});

it("nor of one that has begun", async () => {
  await app.prisma.mail.deleteMany();
  expect(await remindAt("2027-04-10T18:00:00Z")).toEqual([]);
});
