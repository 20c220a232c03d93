import { newId } from "../../../src/lib/ids.ts";
import type { testApp } from "../../support/test-app.ts";
import { exampleDocument, makeClub } from "../example-club.ts";

type TestApp = Awaited<ReturnType<typeof testApp>>;

/** Somebody with an account, who is the given member of the club. */
export async function makePerson({ prisma }: TestApp, club: string, member: string): Promise<string> {
  const { id: clubId } = await prisma.club.findUniqueOrThrow({ where: { code: club } });
  const id = newId();
  await prisma.person.create({ data: { id, email: `${member}.${club}@club.example`, name: member } });
  await prisma.membership.create({ data: { clubId, memberCode: member, personId: id } });
  return id;
}

/** A club with an open night on the evening of a day, of which a member has the train and the yard. */
export async function makeOpenNight(app: TestApp, code: string, day: string) {
  const club = await makeClub(app, code);
  const [march] = exampleDocument.sessions;
  const slot = {
    ...march?.slots[0],
    code: "only",
    startsAt: `${day}T19:00`,
    endsAt: `${day}T21:00`,
    timetable: "winter",
    timetableVersion: 1,
  };
  await app.request
    .post(`${club}/sessions`)
    .send({ ...march, code: "night", name: "The night", slots: [slot] })
    .expect(201);
  const night = `${club}/sessions/night`;
  await app.request.post(`${night}/booking/moves`).set("if-match", "*").send({ to: "open" }).expect(200);
  return night;
}

/** The member has the night's first train, from and until the given instants. */
export async function giveTrain(
  { prisma }: TestApp,
  club: string,
  member: string,
  fromAt: Date,
  untilAt: Date,
) {
  const { id: clubId } = await prisma.club.findUniqueOrThrow({ where: { code: club } });
  const session = await prisma.session.findFirstOrThrow({
    where: { clubId, code: "night" },
    include: { slots: true },
  });
  const version = await prisma.timetableVersion.findFirstOrThrow({ where: { clubId, number: 1 } });
  const train = await prisma.train.findFirstOrThrow({
    where: { versionId: version.id },
    orderBy: { code: "asc" },
  });
  return prisma.claim.create({
    data: {
      clubId,
      sessionId: session.id,
      slotCode: "only",
      trainId: train.id,
      memberCode: member,
      fromAt,
      untilAt,
    },
  });
}
