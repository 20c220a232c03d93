import type { DemoSignIn } from "../../../shared/accounts.ts";
import type { DatabaseClient } from "../../database/client.ts";
import { inTransaction } from "../../database/transaction.ts";
import type { Clock } from "../../lib/clock.ts";
import { newId } from "../../lib/ids.ts";
import { makeLink } from "./link-store.ts";
import { createPasswords, PASSWORD_COST, type PasswordCost } from "./passwords.ts";

/** A link to the first account of all; undefined once there is a person. */
export async function makeFirstLink(database: DatabaseClient, clock: Clock): Promise<string | undefined> {
  if ((await database.person.count()) > 0) return undefined;
  const { token } = await inTransaction(database, (transaction) =>
    makeLink(transaction, { purpose: "first-secretary" }, clock.now()),
  );
  return token;
}

export interface DemoPerson extends DemoSignIn {
  /** Code of the member they are. */
  readonly member: string;
}

/** Lets some of the demo club's members in. Those that are there already stay as they are. */
export async function letDemoPeopleIn(
  database: DatabaseClient,
  clubCode: string,
  people: readonly DemoPerson[],
  cost: PasswordCost = PASSWORD_COST,
): Promise<void> {
  const passwords = createPasswords(cost);
  const club = await database.club.findUniqueOrThrow({ where: { code: clubCode } });
  for (const { email, password, name, member } of people) {
    const passwordHash = await passwords.hash(password);
    await inTransaction(database, async (transaction) => {
      if ((await transaction.person.count({ where: { email } })) > 0) return;
      const id = newId();
      await transaction.person.create({ data: { id, email, name, passwordHash, demo: true } });
      await transaction.membership.create({ data: { clubId: club.id, memberCode: member, personId: id } });
    });
  }
}
