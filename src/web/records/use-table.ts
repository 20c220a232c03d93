import { useState } from "preact/hooks";
import { asProblem, type Problem } from "../api/problem.ts";
import type { RecordDraft, TableKind } from "./fields.ts";
import { bodyOf, type KeptRecord, readRecord, removeRecord, saveRecord } from "./records-service.ts";

/** What was done last, and the way back. */
export interface Done {
  readonly text: string;
  readonly undo: (() => Promise<void>) | null;
}

export interface TableDeeds {
  readonly rows: readonly KeptRecord[];
  readonly done: Done | null;
  readonly problem: Problem | null;
  readonly isBusy: boolean;
  /** Answers whether it was done. */
  readonly save: (record: RecordDraft, before: KeptRecord | null) => Promise<boolean>;
  readonly remove: (record: KeptRecord) => Promise<boolean>;
  readonly forget: () => void;
}

/** RFC 9110, 15.5.13: the version that was named is not the one there is. */
const STALE = 412;

const byCode = (a: KeptRecord, b: KeptRecord) => (a.code < b.code ? -1 : a.code > b.code ? 1 : 0);

/** The rows of a table, and what can be done to them: one thing at a time, each with its way back. */
export function useTable(club: string, kind: TableKind, first: readonly KeptRecord[]): TableDeeds {
  const [rows, setRows] = useState(() => [...first].sort(byCode));
  const [done, setDone] = useState<Done | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [isBusy, setBusy] = useState(false);

  /** Does a deed; where somebody else changed the record first, reads theirs, so that the next try is made on it. */
  async function run(deed: () => Promise<Done>, on: KeptRecord | null = null): Promise<boolean> {
    if (isBusy) return false;
    setBusy(true);
    setProblem(null);
    setDone(null);
    try {
      setDone(await deed());
      return true;
    } catch (error) {
      const refusal = asProblem(error);
      if (refusal.status === STALE && on !== null) await readTheirs(on.code);
      setProblem(refusal);
      return false;
    } finally {
      setBusy(false);
    }
  }

  const put = (kept: KeptRecord, instead: string | null) =>
    setRows((now) =>
      [...now.filter(({ code }) => code !== instead && code !== kept.code), kept].sort(byCode),
    );
  const drop = (gone: string) => setRows((now) => now.filter(({ code }) => code !== gone));

  async function readTheirs(code: string): Promise<void> {
    const theirs = await readRecord(club, kind, code).catch(() => null);
    if (theirs !== null) put(theirs, code);
  }

  async function doSave(record: RecordDraft, before: KeptRecord | null): Promise<Done> {
    const kept = await saveRecord(club, kind, record, before);
    put(kept, before?.code ?? null);
    const undo = async () => {
      if (before === null) {
        await run(async () => {
          await removeRecord(club, kind, kept);
          drop(kept.code);
          return { text: `${kept.code} is gone again.`, undo: null };
        });
      } else
        await run(async () => {
          put(await saveRecord(club, kind, bodyOf(before), kept), kept.code);
          return { text: `${before.code} is as it was.`, undo: null };
        });
    };
    return { text: `${kept.code} is saved.`, undo };
  }

  async function doRemove(record: KeptRecord): Promise<Done> {
    await removeRecord(club, kind, record);
    drop(record.code);
    const undo = async () => {
      await run(async () => {
        put(await saveRecord(club, kind, bodyOf(record), null), null);
        return { text: `${record.code} is back.`, undo: null };
      });
    };
    return { text: `${record.code} is removed.`, undo };
  }

  return {
    rows,
    done,
    problem,
    isBusy,
    save: (record, before) => run(() => doSave(record, before), before),
    remove: (record) => run(() => doRemove(record), record),
    forget: () => {
      setProblem(null);
      setDone(null);
    },
  };
}
