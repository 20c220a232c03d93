import { createRandom, type Random } from "../bench/random.ts";
import type { CrowdMember, CrowdPlan } from "./crowd-plan.ts";
import type { Entry, HadClaim } from "./journal.ts";
import { type Answer, post } from "./post.ts";

/** What a member of the crowd shares with the others of their process. */
export interface Table {
  readonly plan: CrowdPlan;
  /** Whether there is another post to make, and takes it. */
  takeTurn(): boolean;
  write(entry: Entry): void;
}

interface Member extends CrowdMember {
  readonly table: Table;
  readonly random: Random;
  /** Server they talk to first. */
  readonly home: number;
  /** Claims they know to be theirs. */
  readonly mine: Map<string, string>;
  posts: number;
}

/** Presses buttons at random until the crowd has made all its posts; often two at once, and some twice. */
export async function playMember(person: CrowdMember, at: number, table: Table): Promise<void> {
  const random = createRandom(table.plan.seed * 10_007 + at);
  const member: Member = { ...person, table, random, home: at, mine: new Map(), posts: 0 };
  while (table.takeTurn()) await act(member);
}

async function act(member: Member): Promise<void> {
  const { random, mine } = member;
  if (mine.size > 0 && random.chance(0.4)) return giveBack(member);
  const dice = random.next();
  if (dice < 0.08) return waitFor(member);
  if (dice < 0.16) return claimTwice(member);
  if (dice < 0.2) return readEvening(member);
  if (dice < 0.4 && member.table.takeTurn()) {
    await Promise.all([claim(member), claim(member)]);
    return;
  }
  await claim(member);
}

interface ClaimPost {
  readonly job: string;
  readonly key: string;
  readonly handset: string | undefined;
  readonly body: unknown;
}

function choose({ code, random, table, posts }: Member): ClaimPost {
  const { plan } = table;
  const { code: job, kind } = random.pick(plan.jobs);
  const handset = kind === "train" && random.chance(0.25) ? random.pick(plan.handsets) : undefined;
  return {
    job,
    key: `soak-${plan.seed}-${code}-${posts}`,
    handset,
    body: { [kind]: job, member: code, ...(handset === undefined ? {} : { handset }) },
  };
}

async function claim(member: Member, wanted = nextPost(member), home = member.home): Promise<Answer> {
  const { plan, write } = member.table;
  const answer = await post(
    plan.servers,
    home,
    {
      method: "POST",
      path: `${plan.slotUrl}/claims`,
      body: wanted.body,
      key: wanted.key,
      headers: member.headers,
    },
    member.random,
  );
  const made = answer.status === 201 ? toClaim(answer.body) : undefined;
  if (made) member.mine.set(made.id, made.job);
  write({
    act: "claim",
    member: member.code,
    job: wanted.job,
    key: wanted.key,
    ...(wanted.handset === undefined ? {} : { handset: wanted.handset }),
    ...told(answer),
    ...(made ? { claim: made } : {}),
  });
  return answer;
}

function nextPost(member: Member): ClaimPost {
  member.posts++;
  return choose(member);
}

/** The same post with the same key, at the same time, through two servers: they must say the same. */
async function claimTwice(member: Member): Promise<void> {
  const { plan, write } = member.table;
  const wanted = nextPost(member);
  const again = post(
    plan.servers,
    member.home + 1,
    {
      method: "POST",
      path: `${plan.slotUrl}/claims`,
      body: wanted.body,
      key: wanted.key,
      headers: member.headers,
    },
    member.random,
  );
  const [first, second] = await Promise.all([claim(member, wanted), again]);
  const same = first.status === second.status && JSON.stringify(first.body) === JSON.stringify(second.body);
  write({ act: "repeat", member: member.code, job: wanted.job, key: wanted.key, same, ...told(second) });
}

async function giveBack(member: Member): Promise<void> {
  const { plan, write } = member.table;
  const [id, job] = member.random.pick([...member.mine]);
  member.mine.delete(id);
  member.posts++;
  const key = `soak-${plan.seed}-${member.code}-${member.posts}`;
  const answer = await post(
    plan.servers,
    member.home,
    { method: "DELETE", path: `${plan.slotUrl}/claims/${id}`, key, headers: member.headers },
    member.random,
  );
  const next = answer.status === 200 ? (answer.body as { next: unknown }).next : null;
  const passedOn = next === null ? null : toClaim(next);
  write({ act: "give-back", member: member.code, job, key, id, next: passedOn, ...told(answer) });
}

async function waitFor(member: Member): Promise<void> {
  const { plan, write } = member.table;
  const { job, key, body } = nextPost(member);
  const { handset: _, ...bare } = body as Record<string, unknown>;
  const answer = await post(
    plan.servers,
    member.home,
    { method: "POST", path: `${plan.slotUrl}/queue`, body: bare, key, headers: member.headers },
    member.random,
  );
  write({ act: "queue", member: member.code, job, key, ...told(answer) });
}

/** Finds out what came to them from a queue. */
async function readEvening(member: Member): Promise<void> {
  const { plan } = member.table;
  const url = `${plan.slotUrl.replace(/\/slots\/.*/, "")}/my-evening?member=${member.code}`;
  const { status, body } = await post(
    plan.servers,
    member.home,
    { method: "GET", path: url, headers: member.headers },
    member.random,
  );
  if (status !== 200) return;
  member.mine.clear();
  for (const { claim: had } of (body as { items: { claim: { id: string; code: string } }[] }).items)
    member.mine.set(had.id, had.code);
}

function toClaim(body: unknown): HadClaim {
  const { id, code, member, handset } = body as {
    id: string;
    code: string;
    member: string;
    handset: string | null;
  };
  return { id, job: code, member, handset };
}

function told({ sentMs, answeredMs, sendings, status, body }: Answer) {
  const code = status >= 400 ? (body as { code?: string } | null)?.code : undefined;
  return { sentMs, answeredMs, sendings, status, ...(code === undefined ? {} : { code }) };
}
