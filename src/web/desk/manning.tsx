import type { Board } from "../../../shared/claims.ts";
import { crewAddress } from "../addresses.ts";
import type { BoardRow } from "../crew/board-groups.ts";
import { titleOf, whatOf } from "../crew/crew.ts";
import { assign } from "../crew/crew-service.ts";
import { roomTime } from "../crew/times.ts";
import { endText } from "../nights/end-text.ts";
import { fieldText } from "../nights/field.tsx";
import { useWish } from "../nights/use-wish.ts";
import { useDesk } from "./desk.ts";

/** Who drives what, slot by slot: first what has nobody, then, folded, the rest. */
export function Manning() {
  const { boards } = useDesk();
  return (
    <section aria-labelledby="manning-heading">
      <h2 id="manning-heading">Trains and duties</h2>
      {boards.map((board) => (
        <SlotManning key={board.slot} board={board} />
      ))}
    </section>
  );
}

function rowsOf(board: Board): readonly BoardRow[] {
  const trains = board.trains.map((row) => ({ kind: "train", row }) as const);
  const duties = board.duties.map((row) => ({ kind: "duty", row }) as const);
  return [...duties, ...trains];
}

function SlotManning({ board }: { readonly board: Board }) {
  const { address } = useDesk();
  const rows = rowsOf(board);
  const free = rows.filter(({ row }) => row.claim === null);
  const manned = rows.filter(({ row }) => row.claim !== null);
  return (
    <div class="slot-manning">
      <h3>
        {board.slotName}: {free.length === 0 ? "nothing without somebody" : `${free.length} without somebody`}
        {" · "}
        <a href={crewAddress(address.club, board.session, board.slot)}>the members' board</a>
      </h3>
      <Rows board={board} rows={free} />
      {manned.length > 0 && (
        <details class="fold">
          <summary>{manned.length} with somebody</summary>
          <Rows board={board} rows={manned} />
        </details>
      )}
    </div>
  );
}

function Rows({ board, rows }: { readonly board: Board; readonly rows: readonly BoardRow[] }) {
  if (rows.length === 0) return null;
  return (
    <table class="manning">
      <thead>
        <tr>
          <th>Time</th>
          <th>What</th>
          <th>Where</th>
          <th>Who</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((it) => (
          <ManningRow key={`${it.kind} ${it.row.code}`} board={board} it={it} />
        ))}
      </tbody>
    </table>
  );
}

function ManningRow({ board, it }: { readonly board: Board; readonly it: BoardRow }) {
  const { mayBook } = useDesk();
  const { row, kind } = it;
  return (
    <tr>
      <td>
        {roomTime(row.from.at, board.timeZone)} <span class="quiet">{row.from.layout}</span>
      </td>
      <th scope="row">
        <b>{titleOf(kind, row.code, row.name)}</b> {kind === "train" && row.name}
        {row.queue.length > 0 && <span class="quiet"> · {row.queue.length} waiting</span>}
      </th>
      <td>
        {endText(row.from)}
        {kind === "train" && ` → ${endText(row.to)}`}
      </td>
      <td>
        {mayBook ? (
          <Assigning board={board} it={it} />
        ) : (
          (row.claim?.name ?? <span class="quiet">nobody</span>)
        )}
        {row.claim?.problems.map(({ code, sentence }) => (
          <p key={code} class="missing">
            {sentence}
          </p>
        ))}
      </td>
    </tr>
  );
}

/** States of a night in which the secretary may say who does what. */
const ASSIGNABLE: readonly Board["state"][] = ["open", "locked", "running"];

function Assigning({ board, it }: { readonly board: Board; readonly it: BoardRow }) {
  const { address, deeds, members } = useDesk();
  const { row, kind } = it;
  const has = row.claim?.member ?? "";
  const wish = useWish(has);
  const title = titleOf(kind, row.code, row.name);
  if (!ASSIGNABLE.includes(board.state)) return <>{row.claim?.name ?? <span class="quiet">nobody</span>}</>;
  const give = (member: string, undone: string | null): Promise<boolean> => {
    const name = members.find(({ code }) => code === member)?.name;
    return deeds.run({
      name: `assign ${kind} ${row.code} ${member}`,
      deed: (key) =>
        assign(
          { ...address, slot: board.slot },
          { ...whatOf(it), member: member === "" ? null : member },
          key,
        ),
      tell: () => ({
        text: name === undefined ? `${title} has nobody now.` : `${title} is ${name}'s.`,
        undo: undone === null ? undefined : () => void give(undone, null),
      }),
    });
  };
  const choose = (event: Event) => {
    const member = fieldText(event);
    void wish.set(member, () => give(member, has));
  };
  return (
    <select class="assign" aria-label={`Who has ${title}`} value={wish.shown} onChange={choose}>
      <option value="">nobody</option>
      {members.map(({ code, name, passedFor }) => {
        const lacks = row.requires.filter((tag) => !passedFor.includes(tag));
        return (
          <option key={code} value={code}>
            {name}
            {lacks.length > 0 && ` (not passed for ${lacks.join(", ")})`}
          </option>
        );
      })}
    </select>
  );
}
