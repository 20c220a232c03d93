import type { PersonExport } from "../../../shared/accounts.ts";
import type { Database } from "../../database/client.ts";
import { Prisma } from "../../database/generated/client.ts";
import { KEPT_OF_PEOPLE, type KeptTable } from "./kept-of-people.ts";
import { toToken } from "./mapper.ts";

type Rows = Record<string, unknown>[];

/** All that is kept of a person, in their clubs and beside them. */
export async function exportPerson(database: Database, personId: string): Promise<PersonExport> {
  const person = await database.person.findUniqueOrThrow({
    where: { id: personId },
    include: {
      signIns: { orderBy: { createdAt: "asc" } },
      accessTokens: { include: { club: { select: { code: true } } }, orderBy: { createdAt: "asc" } },
      memberships: { include: { club: true }, orderBy: { club: { code: "asc" } } },
    },
  });
  const clubs: PersonExport["clubs"] = [];
  for (const { club, memberCode } of person.memberships)
    clubs.push({
      code: club.code,
      name: club.name,
      member: memberCode,
      kept: await readKept(database, "member", Prisma.sql`club_id = ${club.id}::uuid`, memberCode),
    });
  return {
    person: { name: person.name, email: person.email ?? "", createdAt: person.createdAt.toISOString() },
    signIns: person.signIns.map(({ createdAt, lastSeenAt, expiresAt }) => ({
      createdAt: createdAt.toISOString(),
      lastSeenAt: lastSeenAt.toISOString(),
      expiresAt: expiresAt.toISOString(),
    })),
    tokens: person.accessTokens.map(toToken),
    clubs,
    other: {
      ...(await readKept(database, "person", Prisma.sql`true`, personId)),
      mails: await database.$queryRaw<Rows>`
        select template, subject, state, created_at, sent_at from mails where to_address = ${person.email} order by id`,
    },
  };
}

async function readKept(
  database: Database,
  names: KeptTable["names"],
  where: Prisma.Sql,
  value: string,
): Promise<Record<string, Rows>> {
  const kept: Record<string, Rows> = {};
  for (const { table, column, without = [] } of KEPT_OF_PEOPLE.filter((one) => one.names === names)) {
    const found = await database.$queryRaw<{ row: Record<string, unknown> }[]>`
      select to_jsonb(t) - ${[...without]}::text[] as row from ${Prisma.raw(`"${table}"`)} t
      where ${where} and ${Prisma.raw(`"${column}"`)}::text = ${value}`;
    kept[table] = found.map(({ row }) => row);
  }
  return kept;
}
