import { useEffect, useState } from "preact/hooks";
import type { EffectsAnswer } from "../../../shared/what-if.ts";
import type { RecordDraft, TableKind } from "./fields.ts";
import { tellEffects } from "./records-service.ts";

/** As long as somebody types on, nothing is asked. */
const SETTLE_MS = 500;

/**
 * What a record as it is being typed would do to the nights to come; null while nothing is asked or known. `record` is null
 * while it is as it was, or not yet whole.
 */
export function useEffectsTold(
  club: string,
  kind: TableKind,
  record: RecordDraft | null,
): EffectsAnswer | null {
  const [told, setTold] = useState<EffectsAnswer | null>(null);
  const text = record === null ? null : JSON.stringify(record);
  useEffect(() => {
    setTold(null);
    if (text === null) return;
    const controller = new AbortController();
    const timer = setTimeout(() => {
      // what cannot be told now is told by the check of the night
      tellEffects(club, kind, JSON.parse(text), controller.signal).then(setTold, () => {});
    }, SETTLE_MS);
    return () => {
      clearTimeout(timer);
      controller.abort();
    };
  }, [club, kind, text]);
  return told;
}
