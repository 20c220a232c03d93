import { describe, expect, it } from "vitest";
import type { Board } from "../../../shared/claims.ts";
import { type BoardRow, groupBoard, rowKey } from "../../../src/web/crew/board-groups.ts";
import { CREW_BOARD, claimOf, OTHER } from "../../browser/fixture/crew-board.ts";

const NONE: ReadonlySet<string> = new Set();
const keys = (rows: readonly BoardRow[]) => rows.map(rowKey);

/** The board after somebody else took a train. */
function taken(code: string): Board {
  const trains = CREW_BOARD.trains.map((train) =>
    train.code === code
      ? { ...train, may: false, mayQueue: true, claim: claimOf(train, OTHER, "R3", 9) }
      : train,
  );
  return { ...CREW_BOARD, trains };
}

describe("a claim board", () => {
  it("shows every row but one's own in one group, soonest first", () => {
    const { free, taken, notForMe } = groupBoard(CREW_BOARD, NONE);
    expect(keys(free)).toEqual(["train 12", "train 14"]);
    expect(keys(taken)).toEqual(["train 9"]);
    expect(keys(notForMe)).toEqual(["duty box-a", "train 7"]);
    const all = [...free, ...taken, ...notForMe];
    expect(all).toHaveLength(CREW_BOARD.trains.length + CREW_BOARD.duties.length - 1);
  });

  it("keeps a row in its place that was free when one looked, and moves it once one looks anew", () => {
    const seen = new Set(["train 12", "train 14"]);
    expect(keys(groupBoard(taken("12"), seen).free)).toEqual(["train 12", "train 14"]);
    const anew = groupBoard(taken("12"), NONE);
    expect(keys(anew.free)).toEqual(["train 14"]);
    expect(keys(anew.taken)).toEqual(["train 12", "train 9"]);
  });

  it("moves a row that one may no longer have for another reason", () => {
    const trains = CREW_BOARD.trains.map((train) => (train.code === "12" ? { ...train, may: false } : train));
    const { free, notForMe } = groupBoard({ ...CREW_BOARD, trains }, new Set(["train 12"]));
    expect(keys(free)).toEqual(["train 14"]);
    expect(keys(notForMe)).toContain("train 12");
  });
});
