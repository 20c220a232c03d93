import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { useMay } from "../api/use-me.ts";
import { Refused } from "../shell/refused.tsx";
import { type OpenRow, toCell, valueAt, YES } from "./draft.ts";
import type { Field, TableKind } from "./fields.ts";
import type { KeptRecord, Names } from "./records-service.ts";
import { RowEditor } from "./row-editor.tsx";
import { useTable } from "./use-table.ts";

interface RecordTableProps {
  readonly club: string;
  readonly kind: TableKind;
  readonly records: readonly KeptRecord[];
  readonly names: Names;
  /** The code in the address, to begin with. */
  readonly chosen: string | null;
  readonly onChosen: (code: string | null) => void;
  readonly pageOf?: ((code: string) => string) | undefined;
  /** Rows that were left with something typed in them, by code; the new one under no code. */
  readonly drafts: Map<string, OpenRow>;
}

const NEW = "";

/** A kind of record as a table that is edited in place. */
export function RecordTable({
  club,
  kind,
  records,
  names,
  chosen,
  onChosen,
  pageOf,
  drafts,
}: RecordTableProps) {
  const table = useTable(club, kind, records);
  const [isNew, setNew] = useState(false);
  const [wanted, setWanted] = useState("");
  const mayKeep = useMay(club, kind.keep);
  const shown = table.rows.filter((row) => matches(kind, row, wanted));
  const isOpen = isNew || shown.some(({ code }) => code === chosen);
  const keep = (code: string, row: OpenRow | null) => {
    if (row === null) drafts.delete(code);
    else drafts.set(code, row);
  };
  const close = (code: string, isGivenUp: boolean) => {
    if (isGivenUp) drafts.delete(code);
    setNew(false);
    onChosen(null);
    table.forget();
  };
  return (
    <div class="record-table">
      <p class="quiet">{kind.about}</p>
      <div class="table-tools">
        <label>
          Find{" "}
          <input type="search" value={wanted} onInput={(event) => setWanted(event.currentTarget.value)} />
        </label>
        {mayKeep && (
          <button
            type="button"
            onClick={() => {
              onChosen(null);
              table.forget();
              setNew(true);
            }}
          >
            Add {withArticle(kind.word)}
          </button>
        )}
      </div>
      <p role="status" class="table-done">
        {table.done && (
          <>
            {table.done.text}{" "}
            {table.done.undo && (
              <button type="button" class="quiet-button" onClick={() => void table.done?.undo?.()}>
                Undo
              </button>
            )}
          </>
        )}
      </p>
      {!isOpen && <Refused problem={table.problem} />}
      {isNew && (
        <RowEditor
          club={club}
          kind={kind}
          names={names}
          before={null}
          left={drafts.get(NEW)}
          onEdit={(row) => keep(NEW, row)}
          isBusy={table.isBusy}
          problem={table.problem}
          onClose={(isGivenUp) => close(NEW, isGivenUp)}
          onSave={(record) =>
            void table.save(record, null).then((isDone) => {
              if (!isDone) return;
              drafts.delete(NEW);
              setNew(false);
            })
          }
        />
      )}
      {table.rows.length === 0 && !isNew && <p>There are no {kind.words} yet.</p>}
      {table.rows.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls has to be reachable by keyboard
        <section class="wide-frame" tabIndex={0} aria-label={`All ${kind.words}`}>
          <table class="records">
            <caption class="visually-hidden">All {kind.words}</caption>
            <thead>
              <tr>
                {kind.fields.map((field) => (
                  <th key={field.path} scope="col" class={isFigure(field) ? "figure" : undefined}>
                    {field.label}
                    {"unit" in field && field.unit ? <span class="quiet"> {field.unit}</span> : null}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {shown.map((row) => (
                <Row
                  key={row.code}
                  kind={kind}
                  row={row}
                  isOpen={row.code === chosen}
                  isLeft={drafts.has(row.code)}
                  onOpen={() => {
                    setNew(false);
                    table.forget();
                    onChosen(row.code === chosen ? null : row.code);
                  }}
                >
                  {pageOf && (
                    <p>
                      <a href={pageOf(row.code)}>All about {row.code}, with its picture</a>
                    </p>
                  )}
                  {mayKeep ? (
                    <>
                      <RowEditor
                        key={row.code}
                        club={club}
                        kind={kind}
                        names={names}
                        before={row}
                        left={drafts.get(row.code)}
                        onEdit={(edited) => keep(row.code, edited)}
                        isBusy={table.isBusy}
                        problem={table.problem}
                        onClose={(isGivenUp) => close(row.code, isGivenUp)}
                        onSave={(record) =>
                          void table.save(record, row).then((isDone) => {
                            if (!isDone) return;
                            drafts.delete(row.code);
                            onChosen(null);
                          })
                        }
                      />
                      <button
                        type="button"
                        class="grave row-remove"
                        onClick={() => void table.remove(row).then((isDone) => isDone && onChosen(null))}
                      >
                        Remove {kind.word} {row.code}
                      </button>
                    </>
                  ) : (
                    <p class="quiet">Your roles let you read this, not change it.</p>
                  )}
                </Row>
              ))}
            </tbody>
          </table>
        </section>
      )}
    </div>
  );
}

interface RowProps {
  readonly kind: TableKind;
  readonly row: KeptRecord;
  readonly isOpen: boolean;
  /** Something was typed into it that is not saved. */
  readonly isLeft: boolean;
  readonly onOpen: () => void;
  readonly children: ComponentChildren;
}

function Row({ kind: { fields }, row, isOpen, isLeft, onOpen, children }: RowProps) {
  return (
    <>
      <tr class={isOpen ? "row-open" : undefined}>
        {fields.map((field) =>
          field.path === "code" ? (
            <th key={field.path} scope="row">
              <button type="button" class="row-button" aria-expanded={isOpen} onClick={onOpen}>
                {row.code}
              </button>
              {isLeft && !isOpen && <span class="quiet"> not saved</span>}
            </th>
          ) : (
            <td key={field.path} class={isFigure(field) ? "figure" : undefined}>
              {shownCell(field, row)}
            </td>
          ),
        )}
      </tr>
      {isOpen && (
        <tr>
          <td colSpan={fields.length} class="row-opened">
            <div class="row-held">{children}</div>
          </td>
        </tr>
      )}
    </>
  );
}

const withArticle = (word: string) => `${/^[aeiou]/.test(word) ? "an" : "a"} ${word}`;

const isFigure = ({ holds }: Field) => holds === "whole" || holds === "number";

function shownCell(field: Field, row: KeptRecord): string {
  const text = toCell(field, valueAt(row, field.path));
  return field.holds === "yes" ? (text === YES ? "yes" : "") : text;
}

function matches({ fields }: TableKind, row: KeptRecord, wanted: string): boolean {
  const text = wanted.trim().toLowerCase();
  if (text === "") return true;
  return fields.some((field) => toCell(field, valueAt(row, field.path)).toLowerCase().includes(text));
}
