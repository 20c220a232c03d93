import { afterAll, afterEach, beforeAll, expect, it } from "vitest";
import { inTransaction } from "../../../src/database/transaction.ts";
import { type ClaimNews, createClaimPost } from "../../../src/features/mails/claim-news.ts";
import { queueingMailer, quietMailer } from "../../../src/mail/mailer.ts";
import { testApp } from "../../support/test-app.ts";
import { giveTrain, makeOpenNight, makePerson } from "../calendar/turns.ts";

let app: Awaited<ReturnType<typeof testApp>>;
let claimId: string;

beforeAll(async () => {
  app = await testApp();
  await makeOpenNight(app, "north", "2027-04-10");
  await makePerson(app, "north", "ada");
  const from = new Date("2027-04-10T18:10:00Z");
  ({ id: claimId } = await giveTrain(app, "north", "ada", from, new Date("2027-04-10T18:21:30Z")));
});
afterEach(() => app.prisma.mail.deleteMany());
afterAll(() => app.close());

async function tell(change: Partial<ClaimNews>, mailer = queueingMailer) {
  const { id: clubId } = await app.prisma.club.findUniqueOrThrow({ where: { code: "north" } });
  const news: ClaimNews = {
    kind: "got-from-queue",
    clubId,
    club: "north",
    session: "night",
    job: { kind: "train", code: "101", name: "Morning goods" },
    claimId,
    member: "ada",
    ...change,
  };
  const post = createClaimPost(mailer, () => "https://foreman.club.example/");
  await inTransaction(app.prisma, (transaction) => post(transaction, news));
  return app.prisma.mail.findMany();
}

it("who was next in the queue hears which train is theirs, and when", async () => {
  const [mail, ...others] = await tell({});
  expect(others).toEqual([]);
  expect(mail).toMatchObject({
    toAddress: "ada.north@club.example",
    template: "got-it",
    subject: "The night: you got Train 101, Morning goods",
  });
  expect(mail?.text).toContain("Saturday 10 April 2027, 19:10");
  expect(mail?.text).toContain("https://foreman.club.example/clubs/north/my-evening/night");
});

it("what was taken off somebody is told with the night's own time, the claim being gone", async () => {
  const [mail] = await tell({ kind: "taken-off", claimId: "01930000-0000-7000-8000-000000000000" });
  expect(mail?.subject).toBe("The night: Train 101, Morning goods is no longer yours");
  expect(mail?.text).toContain("Saturday 10 April 2027, 19:00");
});

it("a duty is called by its name alone", async () => {
  const [mail] = await tell({ kind: "assigned", job: { kind: "duty", code: "yard", name: "The yard" } });
  expect(mail?.subject).toBe("The night: The yard is yours");
});

it("nobody is told who has no account, nor anybody where there is no mail server", async () => {
  expect(await tell({ member: "bo" })).toEqual([]);
  expect(await tell({}, quietMailer)).toEqual([]);
});
