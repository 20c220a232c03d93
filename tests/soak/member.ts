import type { Random } from "../bench/random.ts";
import type { CrowdMember, CrowdPlan } from "./crowd-plan.ts";
import type { Act, Entry, HadClaim } from "./journal.ts";
import { type Answer, post, type Request } from "./post.ts";

/** What those of one process share. */
export interface Table {
  readonly plan: CrowdPlan;
  readonly members: Map<string, Member>;
  /** Whether there is another post to make, and takes it. */
  takeTurn(): boolean;
  write(entry: Entry): void;
}

/** One who presses buttons. */
export interface Member extends CrowdMember {
  readonly table: Table;
  readonly random: Random;
  /** Server they talk to first. */
  readonly home: number;
  /** Claims they think are theirs, with what they are for. */
  readonly mine: Map<string, string>;
  /** Swaps that they were offered. */
  readonly offers: string[];
  keys: number;
}

export interface Wanted {
  readonly act: Act;
  readonly job: string;
  readonly handset?: string | undefined;
  readonly method: Request["method"];
  /** Under the slot's address. */
  readonly path: string;
  readonly body?: unknown;
}

/** Keys are never used for two things, in no process. */
export function newKey(member: Member): string {
  member.keys++;
  return `soak-${member.table.plan.seed}-${member.code}-${member.keys}`;
}

export function send(
  { table: { plan }, headers, random }: Member,
  wanted: Wanted,
  key: string,
  home: number,
): Promise<Answer> {
  const { method, path, body } = wanted;
  const request = { method, path: `${plan.slotUrl}${path}`, body, key, headers };
  return post(plan.servers, home, request, random);
}

/** Sends it, and writes down what became of it. */
export async function deed(member: Member, wanted: Wanted, key = newKey(member)): Promise<Answer> {
  const answer = await send(member, wanted, key, member.home);
  const changes = answer.status < 300 ? readChanges(wanted, answer.body) : {};
  settle(member.table, changes);
  write(member, wanted, key, answer, changes);
  return answer;
}

export interface Changes {
  readonly now?: readonly HadClaim[];
  readonly gone?: readonly string[];
}

export function write(
  member: Member,
  { act, job, handset }: Wanted,
  key: string,
  { sentMs, answeredMs, sendings, status, body }: Answer,
  more: Changes | { readonly same: boolean },
): void {
  const code = status >= 400 ? (body as { code?: string } | null)?.code : undefined;
  member.table.write({
    act,
    member: member.code,
    job,
    handset,
    key,
    sentMs,
    answeredMs,
    sendings,
    status,
    code,
    ...more,
  });
}

interface AnsweredClaim {
  readonly id: string;
  readonly code: string;
  readonly member: string;
  readonly handset: string | null;
}

const toHad = ({ id, code: job, member, handset }: AnsweredClaim): HadClaim => ({ id, job, member, handset });

/** What each answer says of claims. */
function readChanges({ act }: Wanted, body: unknown): Changes {
  if (act === "claim" || act === "handset") return { now: [toHad(body as AnsweredClaim)] };
  if (act === "swap") return { now: (body as { claims: AnsweredClaim[] }).claims.map(toHad) };
  if (act === "give-back") {
    const { claim, next } = body as { claim: AnsweredClaim; next: AnsweredClaim | null };
    return { gone: [claim.id], now: next ? [toHad(next)] : [] };
  }
  if (act === "assign") {
    const { before, now } = body as { before: AnsweredClaim | null; now: AnsweredClaim | null };
    return { gone: before && before.id !== now?.id ? [before.id] : [], now: now ? [toHad(now)] : [] };
  }
  return {};
}

/** Members of the same process tell each other. */
function settle({ members }: Table, { now = [], gone = [] }: Changes): void {
  for (const member of members.values())
    for (const id of [...gone, ...now.map((claim) => claim.id)]) member.mine.delete(id);
  for (const { id, job, member } of now) members.get(member)?.mine.set(id, job);
}
