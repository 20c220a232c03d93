import type { Board, BoardDuty, BoardTrain } from "../../../shared/claims.ts";

/** A train or a standing duty of the board. */
export type BoardRow =
  | { readonly kind: "train"; readonly row: BoardTrain }
  | { readonly kind: "duty"; readonly row: BoardDuty };

export const rowKey = ({ kind, row }: BoardRow) => `${kind} ${row.code}`;

/** The board's rows as one looks for them; each is in one group, soonest first. */
export interface BoardGroups {
  /** One may have these now; also those that were so when one looked, and were taken since. */
  readonly free: readonly BoardRow[];
  /** Others have these; one may wait for some of them. */
  readonly taken: readonly BoardRow[];
  /** Nobody has these, and one may not. */
  readonly notForMe: readonly BoardRow[];
}

/**
 * Every row but one's own. A row in `seenFree` that somebody else took stays where it was, so that nothing moves
 * under a thumb and its place says what became of it.
 */
export function groupBoard(board: Board, seenFree: ReadonlySet<string>): BoardGroups {
  const rows: BoardRow[] = [
    ...board.trains.map((row) => ({ kind: "train", row }) as const),
    ...board.duties.map((row) => ({ kind: "duty", row }) as const),
  ];
  const others = rows
    .filter(({ row }) => !row.mine)
    .sort((a, b) => Date.parse(a.row.from.at) - Date.parse(b.row.from.at));
  const isTaken = ({ row }: BoardRow) => row.claim !== null;
  const isFree = (it: BoardRow) => it.row.may || (isTaken(it) && seenFree.has(rowKey(it)));
  return {
    free: others.filter(isFree),
    taken: others.filter((it) => isTaken(it) && !isFree(it)),
    notForMe: others.filter((it) => !isTaken(it) && !isFree(it)),
  };
}
