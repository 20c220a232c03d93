import type { MemberRecord } from "../api/members.ts";

const plain = (text: string) => text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();

/** Members with every word of `find` in their name, code, roles or what they are passed for, accents or not. */
export function findMembers(members: readonly MemberRecord[], find: string): readonly MemberRecord[] {
  const words = plain(find).split(/\s+/).filter(Boolean);
  if (words.length === 0) return members;
  return members.filter((member) => {
    const { name, code, passedFor, roles, junior } = member;
    const all = plain([name, code, ...passedFor, ...roles, junior ? "junior" : ""].join(" "));
    return words.every((word) => all.includes(word));
  });
}

/** What members of the club are passed for, in the club's own words, each once. */
export function knownTags(members: readonly Pick<MemberRecord, "passedFor">[]): readonly string[] {
  return [...new Set(members.flatMap(({ passedFor }) => passedFor))].sort((a, b) => a.localeCompare(b, "en"));
}
