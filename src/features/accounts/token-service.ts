import type { AccessToken, TokenBody } from "../../../shared/accounts.ts";
import type { DatabaseClient } from "../../database/client.ts";
import type { Clock } from "../../lib/clock.ts";
import { newId } from "../../lib/ids.ts";
import { hashSecret, makeSecret } from "../../lib/secret.ts";
import type { Visitor } from "./entry.ts";
import { faultAt, noToken, notYourClub, tooManyTokens } from "./errors.ts";
import { toToken } from "./mapper.ts";

const MOST_TOKENS = 50;
const LONGEST_MS = 366 * 86_400_000;
/** So that a token is known for one wherever it turns up, in a file or a log. */
const PREFIX = "rf_";

const withClub = { club: { select: { code: true } } } as const;

export type TokenService = ReturnType<typeof createTokenService>;

/** Tokens with which a person's programs come in. */
export function createTokenService(database: DatabaseClient, clock: Clock) {
  async function findClubId({ entry }: Visitor, code: string | null): Promise<string | null> {
    if (code === null) return null;
    const club = entry.clubs.includes(code) ? await database.club.findUnique({ where: { code } }) : null;
    if (club === null) throw notYourClub(code);
    return club.id;
  }

  return {
    async list({ personId }: Visitor): Promise<AccessToken[]> {
      const found = await database.accessToken.findMany({
        where: { personId },
        include: withClub,
        orderBy: { id: "asc" },
      });
      return found.map(toToken);
    },
    async make(visitor: Visitor, body: TokenBody): Promise<AccessToken & { readonly token: string }> {
      const { personId } = visitor;
      const now = clock.now();
      const expiresAt = new Date(body.expiresAt);
      const lifeMs = expiresAt.getTime() - now.getTime();
      if (!(lifeMs > 0 && lifeMs <= LONGEST_MS))
        throw faultAt("expiresAt", "Must be within a year from now.");
      const clubId = await findClubId(visitor, body.club);
      if ((await database.accessToken.count({ where: { personId } })) >= MOST_TOKENS)
        throw tooManyTokens(MOST_TOKENS);
      const token = PREFIX + makeSecret();
      const made = await database.accessToken.create({
        data: {
          id: newId(now.getTime()),
          personId,
          name: body.name,
          scope: body.scope,
          clubId,
          tokenHash: hashSecret(token),
          createdAt: now,
          expiresAt,
        },
        include: withClub,
      });
      return { ...toToken(made), token };
    },
    async revoke({ personId }: Visitor, id: string): Promise<void> {
      const { count } = await database.accessToken.deleteMany({ where: { id, personId } });
      if (count === 0) throw noToken();
    },
  };
}
