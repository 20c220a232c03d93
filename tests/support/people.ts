import type { FastifyInstance } from "fastify";
import supertest from "supertest";
import type { Role } from "../../shared/vocabulary.ts";
import type { DatabaseClient } from "../../src/database/client.ts";
import { startSignIn } from "../../src/features/accounts/index.ts";
import { createPasswords } from "../../src/features/accounts/passwords.ts";
import { newId } from "../../src/lib/ids.ts";

/** What everyone made here signs in with. */
export const PASSWORD = "four lamps in the goods yard";

const passwordHash = createPasswords({ memoryCost: 8, timeCost: 1, parallelism: 1 }).hash(PASSWORD);

interface App {
  readonly app: Pick<FastifyInstance, "server">;
  readonly prisma: DatabaseClient;
}

interface Draft {
  /** Code of the club, which must be there; none where they are in no club yet. */
  readonly club?: string;
  readonly roles?: readonly Exclude<Role, "member">[];
  /** Their code in the club: of a member that is there, or of one to be made. */
  readonly member?: string;
  readonly email?: string;
  /** When they signed in, where a test holds the clock. */
  readonly now?: Date;
}

export type TestPerson = Awaited<ReturnType<typeof makePerson>>;

/** Someone with an account and a role in a club of an app made with `accounts: true`, signed in: `agent` carries their cookie. */
export async function makePerson({ app, prisma }: App, draft: Draft = {}) {
  const id = newId();
  const member = draft.member ?? `m-${id.slice(-6)}`;
  const email = draft.email ?? `${id}@example.org`;
  const name = `Person ${member}`;
  const hash = await passwordHash;
  const { token } = await prisma.$transaction(async (transaction) => {
    await transaction.person.create({ data: { id, email, name, passwordHash: hash } });
    if (draft.club !== undefined) {
      const { id: clubId } = await transaction.club.findUniqueOrThrow({ where: { code: draft.club } });
      const roles = [...(draft.roles ?? [])];
      await transaction.member.upsert({
        where: { clubId_code: { clubId, code: member } },
        create: { id: newId(), clubId, code: member, name, passedFor: [], junior: false, roles },
        update: { roles },
      });
      await transaction.membership.create({ data: { clubId, memberCode: member, personId: id } });
    }
    return startSignIn(transaction, id, draft.now ?? new Date());
  });
  const cookie = `__Host-foreman=${token}`;
  const agent = supertest.agent(app.server).set("cookie", cookie);
  return { id, email, name, member, cookie, agent };
}
