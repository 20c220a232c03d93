import { afterAll, beforeAll, expect, it } from "vitest";
import { queueingMailer } from "../../../src/mail/mailer.ts";
import { testApp } from "../../support/test-app.ts";
import { giveTrain, makeOpenNight, makePerson } from "../calendar/turns.ts";

let app: Awaited<ReturnType<typeof testApp>>;
let night: string;

beforeAll(async () => {
  app = await testApp({ mailer: queueingMailer, publicUrl: () => "https://foreman.club.example/" });
  night = await makeOpenNight(app, "north", "2027-04-10");
  await makePerson(app, "north", "ada");
  await makePerson(app, "north", "bo");
  await giveTrain(app, "north", "ada", new Date("2027-04-10T18:10:00Z"), new Date("2027-04-10T18:21:30Z"));
});
afterAll(() => app.close());

async function say(noteToAll: string, attending: readonly string[] = []) {
  const before = await app.prisma.mail.count();
  await app.request
    .put(`${night}/booking`)
    .set("if-match", "*")
    .send({ venueNote: "", noteToAll, attending })
    .expect(200);
  const mails = await app.prisma.mail.findMany({
    skip: before,
    orderBy: [{ createdAt: "asc" }, { toAddress: "asc" }],
  });
  return mails.map(({ toAddress, subject, text }) => ({ toAddress, subject, text }));
}

it("whoever comes or has something to do hears of a new note, and of the same note not again", async () => {
  const mails = await say("The side door is shut: ring.", ["bo"]);
  expect(mails).toMatchObject([
    { toAddress: "ada.north@club.example", subject: "The night: a note to all" },
    { toAddress: "bo.north@club.example" },
  ]);
  expect(mails[0]?.text).toContain("The side door is shut: ring.");
  expect(mails[0]?.text).toContain("https://foreman.club.example/clubs/north/crew/night");
  expect(await say("The side door is shut: ring.", ["bo"])).toEqual([]);
});

it("a note that is taken away, or one of a night that is off, is mailed to nobody", async () => {
  expect(await say("")).toEqual([]);
  const move = { to: "cancelled", reason: "The hall is let" };
  await app.request.post(`${night}/booking/moves`).set("if-match", "*").send(move).expect(200);
  expect(await say("We meet elsewhere.")).toEqual([]);
});
