import type { Invitation, MemberAccount } from "../../../shared/accounts.ts";
import type { Member } from "../../../shared/members.ts";
import type { RecordState } from "../../../shared/records.ts";
import { type Answer, change, read, readTagged } from "./ask.ts";
import { clubPath, type ListPage } from "./service.ts";

export type MemberRecord = Member & RecordState;

const LARGEST_PAGE = 200;

const membersPath = (club: string) => `${clubPath(club)}/members`;
const memberPath = (club: string, member: string) => `${membersPath(club)}/${encodeURIComponent(member)}`;
const invitationPath = (club: string, member: string) => `${memberPath(club, member)}/invitation`;

/** All of them, page after page, by name. */
export async function listMembers(club: string, signal: AbortSignal): Promise<readonly MemberRecord[]> {
  const members: MemberRecord[] = [];
  let cursor: string | null = null;
  do {
    const query: string = cursor === null ? "" : `&cursor=${encodeURIComponent(cursor)}`;
    const page: ListPage<MemberRecord> = await read(
      `${membersPath(club)}?limit=${LARGEST_PAGE}${query}`,
      signal,
    );
    members.push(...page.items);
    cursor = page.next;
  } while (cursor !== null);
  return members.sort((a, b) => a.name.localeCompare(b.name, "en") || (a.code < b.code ? -1 : 1));
}

export const readMember = (club: string, member: string, signal: AbortSignal) =>
  readTagged<MemberRecord>(memberPath(club, member), signal);

export const createMember = (club: string, body: Member): Promise<Answer<MemberRecord>> =>
  change("POST", membersPath(club), { body });

export const saveMember = (
  club: string,
  member: string,
  body: Member,
  etag: string | null,
): Promise<Answer<MemberRecord>> => change("PUT", memberPath(club, member), { body, etag });

export const removeMember = (club: string, member: string, etag: string | null) =>
  change("DELETE", memberPath(club, member), { etag });

export async function listAccounts(club: string, signal: AbortSignal): Promise<readonly MemberAccount[]> {
  return (await read<{ items: readonly MemberAccount[] }>(`${clubPath(club)}/accounts`, signal)).items;
}

/** Makes a link; one made before for the same member stops working. */
export async function invite(club: string, member: string, email: string): Promise<Invitation> {
  return (await change<Invitation>("POST", invitationPath(club, member), { body: { email } })).value;
}

export const revokeInvitation = (club: string, member: string) =>
  change("DELETE", invitationPath(club, member));
