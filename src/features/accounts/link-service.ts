import type { OneTimeLink, RedeemBody } from "../../../shared/accounts.ts";
import { violatedConstraint } from "../../database/errors.ts";
import { inTransaction, type Transaction } from "../../database/transaction.ts";
import type { Actor } from "../../http/actor.ts";
import { newId } from "../../lib/ids.ts";
import { hashChosen } from "./choose-password.ts";
import type { AccountDeps } from "./deps.ts";
import { alreadyMember, faultAt, signInAs, spentLink } from "./errors.ts";
import { createGuesses } from "./guesses.ts";
import { findLink, takeLink } from "./link-store.ts";
import type { Passwords } from "./passwords.ts";
import { makeSecretary } from "./secretaries.ts";
import { type NewSignIn, startSignIn } from "./sign-ins.ts";

export type LinkService = ReturnType<typeof createLinkService>;

type Link = NonNullable<Awaited<ReturnType<typeof findLink>>>;

/** What links that work once are good for. Each is taken in the transaction that does what it is for. */
export function createLinkService({ database, clock }: AccountDeps, passwords: Passwords) {
  const guesses = createGuesses(database);

  async function find(token: string): Promise<Link> {
    const link = await findLink(database, token, clock.now());
    if (link === null) throw spentLink();
    return link;
  }

  /** Takes the link, does the work and signs in whom it says. */
  const use = (link: Link, work: (transaction: Transaction) => Promise<string>): Promise<NewSignIn> =>
    inTransaction(
      database,
      async (transaction) => {
        if (!(await takeLink(transaction, link.id))) throw spentLink();
        return startSignIn(transaction, await work(transaction), clock.now());
      },
      "ReadCommitted",
    );

  async function makePerson(link: Link, email: string, body: RedeemBody, join: Join): Promise<NewSignIn> {
    const name = given(body, "name");
    const known = [name, email, link.club?.name ?? ""];
    const passwordHash = await hashChosen(passwords, given(body, "password"), known);
    return use(link, async (transaction) => {
      const id = newId();
      await transaction.person.create({ data: { id, email, name, passwordHash } });
      await join(transaction, id);
      return id;
    });
  }

  async function accept(
    link: Link,
    body: RedeemBody,
    actor: Actor | undefined,
  ): Promise<NewSignIn | undefined> {
    const { clubId, memberCode, email } = link;
    if (clubId === null || memberCode === null || email === null) throw spentLink();
    const join: Join = async (transaction, personId) => {
      await transaction.membership.create({ data: { clubId, memberCode, personId } });
    };
    const person = await database.person.findUnique({ where: { email } });
    if (person === null) return makePerson(link, email, body, join);
    if (actor?.entry?.kind !== "sign-in" || actor.personId !== person.id) throw signInAs(email);
    await inTransaction(
      database,
      async (transaction) => {
        if (!(await takeLink(transaction, link.id))) throw spentLink();
        await join(transaction, person.id);
      },
      "ReadCommitted",
    );
    return undefined;
  }

  async function reset(link: Link, body: RedeemBody): Promise<NewSignIn> {
    const { person } = link;
    if (person === null) throw spentLink();
    const email = person.email ?? "";
    const passwordHash = await hashChosen(passwords, given(body, "password"), [person.name, email]);
    const made = await use(link, async (transaction) => {
      await transaction.person.update({ where: { id: person.id }, data: { passwordHash } });
      await transaction.signIn.deleteMany({ where: { personId: person.id } });
      await transaction.oneTimeLink.deleteMany({ where: { personId: person.id } });
      return person.id;
    });
    await guesses.forgiveAccount(email);
    return made;
  }

  return {
    async read(token: string): Promise<OneTimeLink> {
      const { purpose, expiresAt, email, club, member, person } = await find(token);
      const address = person?.email ?? email;
      const account = address === null ? 0 : await database.person.count({ where: { email: address } });
      return {
        purpose: purpose as OneTimeLink["purpose"],
        expiresAt: expiresAt.toISOString(),
        email: address,
        club: club && { code: club.code, name: club.name },
        name: person?.name ?? member?.name ?? null,
        hasAccount: account > 0,
      };
    },
    /** @returns whom to sign in; nobody where one is signed in already */
    async redeem(token: string, body: RedeemBody, actor: Actor | undefined): Promise<NewSignIn | undefined> {
      const link = await find(token);
      try {
        if (link.purpose === "invitation") return await accept(link, body, actor);
        if (link.purpose === "reset") return await reset(link, body);
        return await makePerson(link, given(body, "email"), body, takeOver);
      } catch (error) {
        // two links of one person's at once: the first of them made the account, or joined the club
        if (violatedConstraint(error)?.startsWith("memberships")) throw alreadyMember(link.email ?? "");
        if (violatedConstraint(error) === "people_email_key") throw signInAs(link.email ?? "");
        throw error;
      }
    },
  };
}

type Join = (transaction: Transaction, personId: string) => Promise<void>;

/** The first person of all takes over whatever clubs there are; a second one comes too late. */
const takeOver: Join = async (transaction, personId) => {
  await transaction.$executeRaw`select pg_advisory_xact_lock(hashtextextended('first person', 0))`;
  if ((await transaction.person.count()) > 1) throw spentLink();
  await transaction.oneTimeLink.deleteMany({ where: { purpose: "first-secretary" } });
  for (const { id } of await transaction.club.findMany({ where: { memberships: { none: {} } } }))
    await makeSecretary(transaction, id, personId);
};

function given(body: RedeemBody, field: keyof RedeemBody): string {
  const value = body[field];
  if (value === undefined) throw faultAt(field, "Must be given: this link asks for it.");
  return value;
}
