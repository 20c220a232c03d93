import type { Transaction } from "../../database/transaction.ts";
import { newId } from "../../lib/ids.ts";

/** Makes a person a member of a club that has no secretary yet, and its secretary. */
export async function makeSecretary(
  transaction: Transaction,
  clubId: string,
  personId: string,
): Promise<void> {
  const { name } = await transaction.person.findUniqueOrThrow({ where: { id: personId } });
  const code = await freeCode(transaction, clubId, name);
  await transaction.member.create({
    data: { id: newId(), clubId, code, name, passedFor: [], junior: false, roles: ["secretary"] },
  });
  await transaction.membership.create({ data: { clubId, memberCode: code, personId } });
}

/** Initials, as members' codes often are, with a number where another has them. */
async function freeCode(transaction: Transaction, clubId: string, name: string): Promise<string> {
  const initials = Array.from(name.matchAll(/(?<![\p{L}\p{N}])[\p{L}\p{N}]/gu), ([letter]) => letter);
  const wanted = initials.slice(0, 4).join("").toLowerCase() || "secretary";
  const taken = new Set(
    (await transaction.member.findMany({ where: { clubId }, select: { code: true } })).map(
      ({ code }) => code,
    ),
  );
  for (let n = 1; ; n++) {
    const code = n === 1 ? wanted : `${wanted}${n}`;
    if (!taken.has(code)) return code;
  }
}
