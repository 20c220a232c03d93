import { createHash } from "node:crypto";
import type pg from "pg";
import { runSql } from "../support/sql.ts";
import type { CrowdMember } from "./crowd-plan.ts";
import { SECRETARY } from "./made-club.ts";

const tokenOf = (member: string) => `a token of ${member} in the soak`.replaceAll(" ", "-");

/**
 * Gives each member of the club a person and a personal token, and one of them the secretary's role: so many sign-ins
 * with their slow hashes would be all there is to measure.
 */
export async function issuePasses(connection: pg.ClientConfig, members: readonly string[]) {
  const all = [...members, SECRETARY];
  const people = `
    with member as (
      select m.club_id, m.code, m.name, gen_random_uuid() as person_id, h.hash
      from members m join unnest($1::text[], $2::text[]) h (code, hash) on h.code = m.code
    ), person as (
      insert into people (id, email, name) select person_id, code || '@example.org', name from member returning id
    ), belongs as (
      insert into memberships (club_id, member_code, person_id) select club_id, code, person_id from member
      where (select count(*) from person) > 0 returning person_id
    )
    insert into access_tokens (id, person_id, name, scope, token_hash, created_at, expires_at)
    select gen_random_uuid(), person_id, 'soak', 'write', hash, now(), now() + interval '1 day' from member
    where (select count(*) from belongs) > 0`;
  const hashes = all.map((member) => createHash("sha256").update(tokenOf(member)).digest("hex"));
  await runSql(connection, people, [all, hashes]);
  await runSql(connection, "update members set roles = array['secretary'] where code = $1", [SECRETARY]);
  const passOf = (member: string) => ({ authorization: `Bearer ${tokenOf(member)}` });
  return {
    people: members.map((code): CrowdMember => ({ code, headers: passOf(code) })),
    secretary: passOf(SECRETARY),
  };
}
