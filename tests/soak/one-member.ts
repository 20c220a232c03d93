import { setTimeout as sleep } from "node:timers/promises";
import { createRandom } from "../bench/random.ts";
import {
  answerOffer,
  changeHandset,
  claim,
  claimTwice,
  giveBack,
  offer,
  readEvening,
  waitFor,
} from "./acts.ts";
import type { CrowdMember } from "./crowd-plan.ts";
import { deed, type Member, type Table } from "./member.ts";

/** Presses buttons at random until the crowd has made all its posts; often two at once, and some twice. */
export async function playMember(person: CrowdMember, at: number, table: Table): Promise<void> {
  const member = seat(person, at, table);
  table.members.set(person.code, member);
  while (table.takeTurn()) await act(member);
}

/** Says at random who has what, beside all others, and takes their time over it. */
export async function playSecretary(headers: CrowdMember["headers"], table: Table): Promise<void> {
  const secretary = seat({ code: "secretary", headers }, table.plan.people.length, table);
  const { random } = secretary;
  for (let turn = 0; table.takeTurn(); turn++) {
    const { code: job, kind } = random.pick(table.plan.jobs);
    const member = random.chance(0.7) ? random.pick(table.plan.people).code : null;
    const body = { [kind]: job, member };
    await deed(
      { ...secretary, code: member ?? "", keys: turn },
      { act: "assign", job, method: "PUT", path: "/assignments", body },
      `soak-${table.plan.seed}-secretary-${turn}`,
    );
    await sleep(random.whole(20, 200));
  }
}

function seat(person: CrowdMember, at: number, table: Table): Member {
  const random = createRandom(table.plan.seed * 10_007 + at);
  return { ...person, table, random, home: at, mine: new Map(), offers: [], keys: 0 };
}

async function act(member: Member): Promise<void> {
  const { random, mine, offers } = member;
  if (offers.length > 0) return answerOffer(member);
  const dice = random.next();
  if (mine.size > 0 && dice < 0.4) return giveBack(member);
  if (mine.size > 0 && dice < 0.5) return offer(member);
  if (mine.size > 0 && dice < 0.55) return changeHandset(member);
  if (dice > 0.95) return readEvening(member);
  if (dice > 0.91) return waitFor(member);
  if (dice > 0.83) return claimTwice(member);
  if (dice > 0.65 && member.table.takeTurn()) {
    await Promise.all([claim(member), claim(member)]);
    return;
  }
  await claim(member);
}
