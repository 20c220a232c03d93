import type { Board, MyEvening } from "../../../shared/claims.ts";
import type { Membership } from "../../http/actor.ts";
import type { Clock } from "../../lib/clock.ts";
import { reachSlot } from "./asking.ts";
import { toBoard } from "./board.ts";
import type { SlotAddress } from "./deeds.ts";
import { forOthers, noMember } from "./errors.ts";
import { toMyEvening } from "./evening.ts";
import type { NightAddress, NightSource } from "./source.ts";

export type ClaimReading = ReturnType<typeof createClaimReading>;

/** What members look at. */
export function createClaimReading({
  clock,
  source,
}: {
  readonly clock: Clock;
  readonly source: NightSource;
}) {
  return {
    async board(asker: Membership, address: SlotAddress): Promise<Board> {
      const view = await source.readView(address);
      const slot = reachSlot(view, address.slot);
      const member = view.plan.members.get(asker.member ?? "") ?? null;
      return toBoard(view, slot, { member, nowMs: clock.now().getTime() });
    },

    /** One's own, or another's where one may book or runs the night. */
    async evening(asker: Membership, address: NightAddress, named: string | undefined): Promise<MyEvening> {
      const view = await source.readView(address);
      const member = named ?? asker.member;
      const mayLook = asker.permissions.has("book") || asker.permissions.has("run-night");
      if (member !== asker.member && !mayLook) throw forOthers();
      if (named !== undefined && !view.plan.members.has(named)) throw noMember(named);
      return toMyEvening(view, member);
    },
  };
}
