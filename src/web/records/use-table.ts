import { useRef, useState } from "preact/hooks";
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
/** There is one of that code by now. */
const TAKEN = 409;
const GONE = 404;

const byCode = (a: KeptRecord, b: KeptRecord) => (a.code < b.code ? -1 : a.code > b.code ? 1 : 0);

/** The rows of a table, and what can be done to them: one thing at a time, each with its way back. */
export function useTable(club: string, kind: TableKind, first: readonly KeptRecord[]): TableDeeds {
  const [rows, setRows] = useState(() => [...first].sort(byCode));
  const [done, setDone] = useState<Done | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [isShownBusy, setBusy] = useState(false);
  // a press in the same moment as another sees it at once
  const isBusy = useRef(false);

  /**
   * Does a deed; where somebody else changed the record first, reads theirs, so that the next try is made on it. What was
   * to be taken back and was not can be tried again.
   */
  async function run(
    deed: () => Promise<Done>,
    on: KeptRecord | null,
    back: Done | null = null,
  ): Promise<boolean> {
    if (isBusy.current) return false;
    isBusy.current = true;
    setBusy(true);
    setProblem(null);
    setDone(null);
    try {
      setDone(await deed());
      return true;
    } catch (error) {
      const refusal = asProblem(error);
      if (on !== null && (refusal.status === STALE || refusal.status === TAKEN)) await readTheirs(on.code);
      if (refusal.status !== STALE) setDone(back);
      setProblem(refusal);
      return false;
    } finally {
      isBusy.current = false;
      setBusy(false);
    }
  }

  /** What was done, and how it is taken back: as often as it takes. */
  function createDone(text: string, on: KeptRecord, takeBack: () => Promise<string>): Done {
    const done: Done = {
      text,
      undo: async () => {
        await run(async () => ({ text: await takeBack(), undo: null }), on, done);
      },
    };
    return done;
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
    return createDone(`${kept.code} is saved.`, kept, async () => {
      if (before === null) {
        await removeRecord(club, kind, kept);
        drop(kept.code);
        return `${kept.code} is gone again.`;
      }
      put(await saveRecord(club, kind, bodyOf(before), kept), kept.code);
      return `${before.code} is as it was.`;
    });
  }

  async function doRemove(record: KeptRecord): Promise<Done> {
    const picture = await kind.keepPicture?.(club, record.code);
    const isGone = await wasGone(removeRecord(club, kind, record));
    drop(record.code);
    if (isGone) return { text: `${record.code} was gone already.`, undo: null };
    return createDone(`${record.code} is removed.`, record, async () => {
      put(await saveRecord(club, kind, bodyOf(record), null), null);
      await picture?.putBack();
      return `${record.code} is back.`;
    });
  }

  return {
    rows,
    done,
    problem,
    isBusy: isShownBusy,
    save: (record, before) => run(() => doSave(record, before), before),
    remove: (record) => run(() => doRemove(record), record),
    forget: () => {
      setProblem(null);
      setDone(null);
    },
  };
}

/** Whether there was nothing to remove any more. */
async function wasGone(removal: Promise<unknown>): Promise<boolean> {
  try {
    await removal;
    return false;
  } catch (error) {
    if (asProblem(error).status === GONE) return true;
    throw error;
  }
}
