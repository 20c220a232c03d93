import { permissionsOf } from "../../../shared/permissions.ts";
import type { Role } from "../../../shared/vocabulary.ts";
import type { Database } from "../../database/client.ts";
import type { Actor, Authenticate, Entry } from "../../http/actor.ts";
import { readSignInCookie } from "../../http/cookies.ts";
import { bearerToken } from "../../http/csrf.ts";
import type { Clock } from "../../lib/clock.ts";
import { Refusal } from "../../lib/refusal.ts";
import { hashSecret } from "../../lib/secret.ts";

/** A sign-in that is not used ends after so long; however much it is used, it ends too (sign-ins.ts). */
const IDLE_S = 14 * 86_400;
// how exactly it is known when one was last used: writing at every request would cost more than it tells
const TOUCH_S = 300;

export interface AuthenticateOptions {
  /** Whether people whose passwords are shown to everyone get in. */
  readonly demo: boolean;
}

/** Knows people by their cookie or token, with one query each. */
export function createAuthenticate(
  database: Database,
  clock: Clock,
  { demo }: AuthenticateOptions = { demo: false },
): Authenticate {
  return async (request) => {
    const token = bearerToken(request);
    if (token !== undefined) {
      const [known] = await findByToken(database, hashSecret(token), clock.now(), demo);
      if (known) return toActor(known, "token");
      throw new Refusal("not-signed-in", "This token is not good, or not any more.");
    }
    const cookie = readSignInCookie(request);
    if (!cookie) return undefined;
    const [known] = await findByCookie(database, hashSecret(cookie), clock.now(), demo);
    return known && toActor(known, "sign-in");
  };
}

interface Known {
  readonly id: string;
  readonly expiresAt: Date;
  readonly personId: string;
  readonly name: string;
  readonly scope: string;
  readonly isForOneClub: boolean;
  readonly clubs: readonly {
    readonly code: string;
    readonly member: string;
    readonly roles: readonly Role[];
  }[];
}

const findByCookie = (database: Database, hash: string, now: Date, demo: boolean): Promise<Known[]> =>
  database.$queryRaw`
    with touched as (
      update sign_ins set last_seen_at = ${now}::timestamptz
      where token_hash = ${hash} and expires_at > ${now}::timestamptz
        and last_seen_at > ${now}::timestamptz - make_interval(secs => ${IDLE_S}::int)
        and last_seen_at < ${now}::timestamptz - make_interval(secs => ${TOUCH_S}::int)
    )
    select s.id, s.expires_at as "expiresAt", p.id as "personId", p.name, 'write' as scope, false as "isForOneClub",
      coalesce(json_agg(json_build_object('code', c.code, 'member', m.code, 'roles', m.roles) order by c.code)
        filter (where c.id is not null), '[]') as clubs
    from sign_ins s
    join people p on p.id = s.person_id and (${demo} or not p.demo)
    left join memberships o on o.person_id = p.id
    left join clubs c on c.id = o.club_id
    left join members m on (m.club_id, m.code) = (o.club_id, o.member_code)
    where s.token_hash = ${hash} and s.expires_at > ${now}::timestamptz
      and s.last_seen_at > ${now}::timestamptz - make_interval(secs => ${IDLE_S}::int)
    group by s.id, p.id`;

const findByToken = (database: Database, hash: string, now: Date, demo: boolean): Promise<Known[]> =>
  database.$queryRaw`
    with touched as (
      update access_tokens set last_used_at = ${now}::timestamptz
      where token_hash = ${hash} and expires_at > ${now}::timestamptz
        and (last_used_at is null or last_used_at < ${now}::timestamptz - make_interval(secs => ${TOUCH_S}::int))
    )
    select t.id, t.expires_at as "expiresAt", p.id as "personId", p.name, t.scope,
      t.club_id is not null as "isForOneClub",
      coalesce(json_agg(json_build_object('code', c.code, 'member', m.code, 'roles', m.roles) order by c.code)
        filter (where c.id is not null), '[]') as clubs
    from access_tokens t
    join people p on p.id = t.person_id and (${demo} or not p.demo)
    left join memberships o on o.person_id = p.id and o.club_id = coalesce(t.club_id, o.club_id)
    left join clubs c on c.id = o.club_id
    left join members m on (m.club_id, m.code) = (o.club_id, o.member_code)
    where t.token_hash = ${hash} and t.expires_at > ${now}::timestamptz
    group by t.id, p.id`;

function toActor(known: Known, kind: Entry["kind"]): Actor {
  const { id, expiresAt, isForOneClub } = known;
  const clubs = new Map(known.clubs.map((club) => [club.code, club]));
  return {
    personId: known.personId,
    name: known.name,
    mayWrite: known.scope === "write",
    membership(clubCode) {
      const club = clubs.get(clubCode);
      return club && { member: club.member, permissions: permissionsOf(["member", ...club.roles]) };
    },
    entry: { kind, id, expiresAt, clubs: [...clubs.keys()], isForOneClub },
  };
}
