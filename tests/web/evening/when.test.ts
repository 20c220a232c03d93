import { describe, expect, it } from "vitest";
import type { Night } from "../../../shared/night.ts";
import { dueOf } from "../../../src/web/evening/when.ts";
import { proposeHolder } from "../../../src/web/live/desk-proposal.ts";
import { CREW_BOARD, claimOf, itemOf, ME } from "../../browser/fixture/crew-board.ts";
import { LIVE_NIGHT } from "../../browser/fixture/live-night.ts";

const train = CREW_BOARD.trains.find(({ code }) => code === "12");
if (!train) throw new Error("the fixture has no train 12");
const item = itemOf(train, claimOf(train, ME, "R2", 1));
const ROOM = Date.parse("2027-03-27T19:00:00Z");

const withClock = (clock: Partial<Night["clock"]>): Night => ({
  ...LIVE_NIGHT,
  clock: { ...LIVE_NIGHT.clock, ...clock },
});

describe("an item of one's evening", () => {
  it("is as far off as the room's clock says while nothing runs", () => {
    expect(dueOf(item, null, 0, ROOM)).toMatchObject({ minutes: 16, isOver: false, tonight: null });
    expect(dueOf(item, null, 0, ROOM + 60 * 60_000).isOver).toBe(true);
  });

  it("goes by the layout clock once that is started: a train expected at 9:32 is 3 min off at 9:20", () => {
    // 12 layout minutes at four times as fast
    const due = dueOf(item, withClock({ state: "running" }), 9 * 3_600 + 20 * 60, ROOM + 60 * 60_000);
    expect(due).toMatchObject({ minutes: 3, isOver: false });
    expect(due.tonight?.lateMinutes).toBe(4);
  });

  it("goes by the room's clock while the layout clock of its slot has not started", () => {
    expect(dueOf(item, withClock({ state: "not started" }), 0, ROOM).minutes).toBe(16);
    expect(dueOf(item, withClock({ slot: "early" }), 9 * 3_600, ROOM).minutes).toBe(16);
  });

  it("is over once the train has arrived or is left out, whatever the clocks say", () => {
    for (const state of ["arrived", "left out"] as const) {
      const trains = LIVE_NIGHT.trains.map((t) => (t.train === "12" ? { ...t, state } : t));
      expect(dueOf(item, { ...LIVE_NIGHT, trains }, 0, ROOM).isOver).toBe(true);
    }
  });
});

describe("a handset on the desk", () => {
  it("is offered to the driver of the first train still to depart with it", () => {
    expect(proposeHolder(LIVE_NIGHT, "R2")).toMatchObject({ member: "ct", train: { train: "12" } });
  });

  it("is offered to nobody where its trains have gone, or nobody claimed one", () => {
    expect(proposeHolder(LIVE_NIGHT, "R1")).toBeNull();
    expect(proposeHolder({ ...LIVE_NIGHT, next: [] }, "R2")).toBeNull();
  });
});
