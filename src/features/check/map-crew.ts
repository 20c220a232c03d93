import type { Crew, Handset, Train } from "../../planner/problem.ts";
import type { PlanSource } from "./plan-source.ts";
import { indexCodes, type PlanFault, resolve } from "./references.ts";

/** Who drives what. Turns of trains that are not in the slot are left out. */
export function toCrew(
  { crew, trains }: PlanSource,
  planned: readonly Train[],
  handsets: readonly Pick<Handset, "code">[],
  faults: PlanFault[],
): Crew {
  const index = {
    members: indexCodes("member", "/members", crew.members, faults),
    trains: indexCodes("train", "/trains", trains, []),
    handsets: indexCodes("handset", "/handsets", handsets, []),
  };
  const inSlot = new Map(planned.map(({ code }, at) => [code, at]));
  const driven = new Set<string>();
  const turns = crew.turns.flatMap(({ train, member, handset }, i) => {
    const at = `/crew/${i}`;
    resolve(index.trains, train, `${at}/train`, faults);
    if (driven.has(train))
      faults.push({ pointer: `${at}/train`, detail: `Train ${train} has a driver already: keep one.` });
    driven.add(train);
    const turn = {
      member: resolve(index.members, member, `${at}/member`, faults),
      handset: handset === null ? -1 : resolve(index.handsets, handset, `${at}/handset`, faults),
    };
    const position = inSlot.get(train);
    return position === undefined ? [] : [{ train: position, ...turn }];
  });
  return {
    members: crew.members.map(({ code, passedFor, junior }) => ({ code, passedFor, junior })),
    turns,
    isSupervised: crew.isSupervised,
  };
}
