import type { Me, PersonExport } from "../../../shared/accounts.ts";
import { permissionsOf } from "../../../shared/permissions.ts";
import type { Role } from "../../../shared/vocabulary.ts";
import type * as rows from "../../database/generated/client.ts";
import { inTransaction } from "../../database/transaction.ts";
import { hashChosen } from "./choose-password.ts";
import type { AccountDeps } from "./deps.ts";
import type { Visitor } from "./entry.ts";
import { erasePerson } from "./erase.ts";
import { keptForAll, wrongPassword } from "./errors.ts";
import { exportPerson } from "./export.ts";
import { createGuesses } from "./guesses.ts";
import type { Passwords } from "./passwords.ts";

export type MeService = ReturnType<typeof createMeService>;

/** What people do with their own account. */
export function createMeService(deps: AccountDeps, passwords: Passwords) {
  const { database, clock } = deps;
  const guesses = createGuesses(database);

  /** The person, once it is sure that it is them: whoever finds a browser open must not get the account for good. */
  async function confirm({ personId }: Visitor, field: string, password: string, address: string) {
    const person = await database.person.findUniqueOrThrow({ where: { id: personId } });
    if (person.demo) throw keptForAll();
    const attempt = { email: person.email ?? "", address };
    await guesses.begin(attempt, clock.now());
    if (!(await passwords.matches(person.passwordHash, password))) throw wrongPassword(field);
    await guesses.forgive(attempt, clock.now());
    return person;
  }

  return {
    async read({ personId, entry }: Visitor): Promise<Me> {
      const person = await database.person.findUniqueOrThrow({
        where: { id: personId },
        include: {
          memberships: { include: { club: true, member: true }, orderBy: { club: { name: "asc" } } },
        },
      });
      const opened = person.memberships.filter(({ club }) => entry.clubs.includes(club.code));
      return {
        person: { name: person.name, email: person.email ?? "" },
        clubs: opened.map(toMyClub),
        expires: entry.expiresAt.toISOString(),
      };
    },
    async rename({ personId }: Visitor, name: string): Promise<void> {
      const { count } = await database.person.updateMany({
        where: { id: personId, demo: false },
        data: { name },
      });
      if (count === 0) throw keptForAll();
    },
    async changePassword(
      visitor: Visitor,
      { current, password }: { readonly current: string; readonly password: string },
      address: string,
    ): Promise<void> {
      const person = await confirm(visitor, "current", current, address);
      const passwordHash = await hashChosen(passwords, password, [person.name, person.email ?? ""]);
      await inTransaction(
        database,
        async (transaction) => {
          await transaction.person.update({ where: { id: person.id }, data: { passwordHash } });
          await transaction.signIn.deleteMany({
            where: { personId: person.id, id: { not: visitor.entry.id } },
          });
          await transaction.oneTimeLink.deleteMany({ where: { personId: person.id } });
        },
        "ReadCommitted",
      );
    },
    exportAll: ({ personId }: Visitor): Promise<PersonExport> => exportPerson(database, personId),
    async erase(visitor: Visitor, password: string, address: string): Promise<void> {
      const { id } = await confirm(visitor, "password", password, address);
      await inTransaction(database, (transaction) => erasePerson(transaction, id, deps), "ReadCommitted");
    },
  };
}

function toMyClub({ club, member }: { readonly club: rows.Club; readonly member: rows.Member }) {
  const roles: Role[] = ["member", ...(member.roles as Role[])];
  return {
    code: club.code,
    name: club.name,
    member: member.code,
    roles,
    permissions: [...permissionsOf(roles)],
  };
}
