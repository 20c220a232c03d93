import type { ImportCount } from "../../../shared/transfer.ts";

const one = (words: string) => words.replace(/ies$/, "y").replace(/s$/, "");
const words = (kind: string) => kind.replace(/(\p{Ll})(\p{Lu})/gu, "$1 $2").toLowerCase();

/** What an import makes and changes, `48 sections, 12 locomotives`; empty where it would do nothing. */
export const importWords = (counts: readonly ImportCount[]): string =>
  counts
    .map(({ kind, made, changed }) => ({ kind, n: made + changed }))
    .filter(({ n }) => n > 0)
    .map(({ kind, n }) => `${n} ${n === 1 ? one(words(kind)) : words(kind)}`)
    .join(", ");
