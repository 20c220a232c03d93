import { useRef } from "preact/hooks";
import type { Board } from "../../../shared/claims.ts";
import { type BoardRow, groupBoard, rowKey } from "./board-groups.ts";
import { useCrew } from "./crew.ts";
import { RowView } from "./row-view.tsx";

/** What one may have, soonest first; what others have; and, folded away, what one may not have and why. */
export function BoardRows() {
  const { board } = useCrew();
  const seenFree = useSeenFree(board);
  const { free, taken, notForMe } = groupBoard(board, seenFree);
  if (board.state !== "open") return <EverybodysRows rows={[...taken, ...notForMe]} />;
  const mayHave = free.filter(({ row }) => row.may).length;
  return (
    <>
      <section aria-labelledby="free-heading">
        <h2 id="free-heading">
          {mayHave === 0 ? "Free for you: nothing just now" : `Free for you: ${mayHave}`}
        </h2>
        <List rows={free} />
      </section>
      <Fold summary={`Taken by others: ${taken.length}`} rows={taken} isOpen={hasMyPlace(taken)} />
      <Fold summary={`Free, but not for you: ${notForMe.length}`} rows={notForMe} isOpen={false} />
    </>
  );
}

const hasMyPlace = (rows: readonly BoardRow[]) => rows.some(({ row }) => row.queue.place !== null);

/** Keys of all rows that were to be had at some time while this board was on show. */
function useSeenFree(board: Board): ReadonlySet<string> {
  const seen = useRef({ slot: board.slot, keys: new Set<string>() });
  if (seen.current.slot !== board.slot) seen.current = { slot: board.slot, keys: new Set() };
  for (const it of groupBoard(board, new Set()).free) seen.current.keys.add(rowKey(it));
  return seen.current.keys;
}

function EverybodysRows({ rows }: { readonly rows: readonly BoardRow[] }) {
  const byTime = [...rows].sort((a, b) => Date.parse(a.row.from.at) - Date.parse(b.row.from.at));
  return (
    <section aria-labelledby="all-heading">
      <h2 id="all-heading">Who does what</h2>
      <List rows={byTime} />
    </section>
  );
}

function List({ rows }: { readonly rows: readonly BoardRow[] }) {
  return (
    <ol class="crew-rows">
      {rows.map((it) => (
        <RowView key={rowKey(it)} it={it} />
      ))}
    </ol>
  );
}

interface FoldProps {
  readonly summary: string;
  readonly rows: readonly BoardRow[];
  readonly isOpen: boolean;
}

function Fold({ summary, rows, isOpen }: FoldProps) {
  if (rows.length === 0) return null;
  return (
    <details class="fold" open={isOpen}>
      <summary>{summary}</summary>
      <List rows={rows} />
    </details>
  );
}
