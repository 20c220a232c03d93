import { useEffect, useId, useRef, useState } from "preact/hooks";
import type { Problem } from "../api/problem.ts";
import { Refused } from "../shell/refused.tsx";
import { CellInput } from "./cell-input.tsx";
import { followTheirs, isEdited, type OpenRow, readCells, toCells } from "./draft.ts";
import { EffectsLine } from "./effects-line.tsx";
import type { RecordDraft, TableKind } from "./fields.ts";
import { bodyOf, type KeptRecord, type Names } from "./records-service.ts";
import { useEffectsTold } from "./use-effects-told.ts";

interface RowEditorProps {
  readonly club: string;
  readonly kind: TableKind;
  readonly names: Names;
  /** Null: a new one. */
  readonly before: KeptRecord | null;
  /** The row as it was left before with something typed in it. */
  readonly left: OpenRow | undefined;
  /** Told of every change, so that what is typed outlives the form; null: there is nothing to keep. */
  readonly onEdit: (row: OpenRow | null) => void;
  readonly isBusy: boolean;
  readonly problem: Problem | null;
  readonly onSave: (record: RecordDraft) => void;
  /** `isGivenUp`: what was typed is not wanted. */
  readonly onClose: (isGivenUp: boolean) => void;
}

/** A row while it is edited: checked as one types, told what it would do to the nights to come before it is saved. */
export function RowEditor(props: RowEditorProps) {
  const { club, kind, names, before, left, onEdit, isBusy, problem, onSave, onClose } = props;
  const id = useId();
  const form = useRef<HTMLFormElement>(null);
  const latest = before === null ? { ...kind.fresh } : toCells(kind, before);
  const [row, setRow] = useState<OpenRow>(
    left ?? { first: latest, cells: latest, version: before?.version, theirs: {} },
  );
  const [wasLeft] = useState(left !== undefined);
  const [opened] = useState(before?.version);
  const { cells, theirs } = row;
  const put = (next: OpenRow) => {
    setRow(next);
    onEdit(isEdited(next) ? next : null);
  };
  const [isTried, setTried] = useState(false);
  useEffect(() => {
    form.current?.querySelector<HTMLElement>("input, select, textarea")?.focus();
  }, []);
  useEffect(() => {
    if (before?.version !== row.version) put(followTheirs(row, latest, before?.version));
  }, [before?.version]);
  const known = Object.fromEntries(Object.entries(names).map(([of, map]) => [of, new Set(map?.keys())]));
  const { record, faults } = readCells(kind, cells, known);
  const isWhole = Object.keys(faults).length === 0;
  const isChanged = isEdited(row);
  const isRenamed = before !== null && record.code !== before.code;
  const isTellable = isWhole && isChanged && !isRenamed && !kind.isUntold;
  const told = useEffectsTold(club, kind, isTellable ? record : null);
  const pointer = (path: string) => `/body/${path.replaceAll(".", "/")}`;
  const refusedAt = (path: string) =>
    problem?.faults.find((fault) => fault.pointer?.startsWith(pointer(path)))?.detail;
  const faultOf = (path: string) => {
    const own = faults[path];
    const isEmpty = (cells[path] ?? "") === "";
    // what is still to be filled in is no fault before one has tried
    return (own !== undefined && (isTried || !isEmpty) ? own : undefined) ?? refusedAt(path);
  };
  const submit = (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (isWhole) onSave(record);
  };
  const title = before === null ? `A new ${kind.word}` : `${kind.word} ${before.code}`;
  return (
    <form
      ref={form}
      class="row-editor"
      aria-label={title}
      onSubmit={submit}
      onKeyDown={(event) => event.key === "Escape" && onClose(false)}
    >
      <h3>{before === null ? `A new ${kind.word}` : before.code}</h3>
      {wasLeft && <p class="quiet">What you typed before is still here, and not saved.</p>}
      <div class="row-cells">
        {kind.fields.map((field) => {
          const fault = faultOf(field.path);
          const at = `${id}-${field.path}`;
          const unit = "unit" in field && field.unit ? ` (${field.unit})` : "";
          return (
            <div key={field.path} class={`field cell-${field.holds}`}>
              <label for={at}>
                {field.label}
                {unit}
              </label>
              <CellInput
                id={at}
                field={field}
                value={cells[field.path] ?? ""}
                names={names}
                fault={fault}
                onValue={(value) => put({ ...row, cells: { ...cells, [field.path]: value } })}
              />
              {field.hint && (
                <p class="field-hint" id={`${at}-hint`}>
                  {field.hint}
                </p>
              )}
              {theirs[field.path] !== undefined && (
                <p class="field-hint">
                  Somebody else made it {theirs[field.path] === "" ? "empty" : theirs[field.path]} meanwhile.
                </p>
              )}
              {fault && (
                <p class="field-fault" id={`${at}-fault`}>
                  {fault}
                </p>
              )}
            </div>
          );
        })}
      </div>
      <EffectsLine told={told} />
      <Refused problem={problem} besides={kind.fields.map(({ path }) => pointer(path))} />
      {problem?.status === 412 && before?.version !== opened && (
        <p class="quiet">
          Somebody else changed it meanwhile. What they changed is in the cells now, and what you typed is
          still there; save again to keep yours.
        </p>
      )}
      <div class="form-end">
        <button type="submit" class="primary" aria-disabled={isBusy}>
          Save
        </button>
        <button type="button" onClick={() => onClose(true)}>
          Close without saving
        </button>
        {isChanged && before !== null && <span class="quiet">{changedWords(kind, before, record)}</span>}
      </div>
    </form>
  );
}

function changedWords(kind: TableKind, before: KeptRecord, record: RecordDraft): string {
  const cells = toCells(kind, bodyOf(before));
  const now = toCells(kind, record);
  const changed = kind.fields
    .filter(({ path }) => cells[path] !== now[path])
    .map(({ label }) => label.toLowerCase());
  return changed.length === 0 ? "" : `Changed: ${changed.join(", ")}`;
}
