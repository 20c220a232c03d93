import { useState } from "preact/hooks";

/** Rows shown at once; more on request, so that a large night does not fill the page with thousands. */
const ROWS_AT_ONCE = 200;

export interface Column {
  readonly head: string;
  /** Figures line up at their right edge. */
  readonly isFigure?: boolean;
}

interface DataTableProps {
  /** What the table holds, for its caption. */
  readonly caption: string;
  readonly columns: readonly Column[];
  /** What one presses to open it. */
  readonly summary?: string;
  /** Made only once the table is opened. */
  readonly rows: () => readonly (readonly string[])[];
}

/** The data of a picture as a table, closed until asked for. */
export function DataTable({ caption, summary = "As a table", columns, rows }: DataTableProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details
      class="data-table"
      onToggle={(event) => setOpen((event.currentTarget as HTMLDetailsElement).open)}
    >
      <summary>{summary}</summary>
      {isOpen && <Rows caption={caption} columns={columns} rows={rows()} />}
    </details>
  );
}

interface RowsProps {
  readonly caption: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
}

function Rows({ caption, columns, rows }: RowsProps) {
  const [most, setMost] = useState(ROWS_AT_ONCE);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls has to be reachable by keyboard
    <section class="table-frame" tabIndex={0} aria-label={caption}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {columns.map(({ head, isFigure }) => (
              <th key={head} scope="col" class={isFigure ? "figure" : undefined}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, most).map((row, i) => (
            <tr key={i}>
              {row.map((cell, j) => (
                <td key={columns[j]?.head} class={columns[j]?.isFigure ? "figure" : undefined}>
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {rows.length > most && (
        <button type="button" onClick={() => setMost(most + 5 * ROWS_AT_ONCE)}>
          Show more of the {rows.length} rows
        </button>
      )}
    </section>
  );
}
