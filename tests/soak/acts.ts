import { deed, type Member, newKey, send, type Wanted, write } from "./member.ts";

const claims = (member: Member): Wanted => {
  const { random, table, code } = member;
  const { code: job, kind } = random.pick(table.plan.jobs);
  const handset = kind === "train" && random.chance(0.25) ? random.pick(table.plan.handsets) : undefined;
  const body = { [kind]: job, member: code, ...(handset === undefined ? {} : { handset }) };
  return { act: "claim", job, handset, method: "POST", path: "/claims", body };
};

export async function claim(member: Member): Promise<void> {
  await deed(member, claims(member));
}

/** The same post with the same key, at the same time, through two servers: they must say the same. */
export async function claimTwice(member: Member): Promise<void> {
  const wanted = claims(member);
  const key = newKey(member);
  const again = send(member, wanted, key, member.home + 1);
  const [first, second] = await Promise.all([deed(member, wanted, key), again]);
  const same = first.status === second.status && JSON.stringify(first.body) === JSON.stringify(second.body);
  write(member, { ...wanted, act: "repeat" }, key, second, { same });
}

export async function giveBack(member: Member): Promise<void> {
  const [id, job] = member.random.pick([...member.mine]);
  member.mine.delete(id);
  await deed(member, { act: "give-back", job, method: "DELETE", path: `/claims/${id}` });
}

export async function changeHandset(member: Member): Promise<void> {
  const [id, job] = member.random.pick([...member.mine]);
  const handset = member.random.pick(member.table.plan.handsets);
  const path = `/claims/${id}/handset`;
  await deed(member, { act: "handset", job, handset, method: "PUT", path, body: { handset } });
}

export async function waitFor(member: Member): Promise<void> {
  const { random, table, code } = member;
  const { code: job, kind } = random.pick(table.plan.jobs);
  await deed(member, {
    act: "queue",
    job,
    method: "POST",
    path: "/queue",
    body: { [kind]: job, member: code },
  });
}

/** Offers one of theirs for one of another in the same process. */
export async function offer(member: Member): Promise<void> {
  const { random, table } = member;
  const others = [...table.members.values()].filter((other) => other !== member && other.mine.size > 0);
  if (others.length === 0) return;
  const [gives, job] = random.pick([...member.mine]);
  const other = random.pick(others);
  const [wants] = random.pick([...other.mine]);
  const answer = await deed(member, {
    act: "offer",
    job,
    method: "POST",
    path: "/swaps",
    body: { gives, wants },
  });
  if (answer.status === 201) other.offers.push((answer.body as { id: string }).id);
}

export async function answerOffer(member: Member): Promise<void> {
  const id = member.offers.pop();
  if (id === undefined || member.random.chance(0.1)) return;
  await deed(member, { act: "swap", job: "", method: "POST", path: `/swaps/${id}/accept` });
}

/** Finds out what came to them from a queue, a swap or the secretary. */
export async function readEvening(member: Member): Promise<void> {
  const path = "/../../my-evening";
  const { status, body } = await send(
    member,
    { act: "claim", job: "", method: "GET", path },
    newKey(member),
    member.home,
  );
  if (status !== 200) return;
  const { items, member: who } = body as Evening;
  if (who?.member !== member.code) return;
  member.mine.clear();
  for (const { claim: had } of items) member.mine.set(had.id, had.code);
}

interface Evening {
  readonly member: { readonly member: string } | null;
  readonly items: readonly { readonly claim: { readonly id: string; readonly code: string } }[];
}
