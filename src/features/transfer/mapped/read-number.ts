export type DecimalMark = "." | ",";

/** A number as written: what it is and, where that shows, its decimal mark; or the two that `1,250` may be. */
export type Written =
  | { readonly value: number; readonly decimal: DecimalMark | null }
  | { readonly mark: DecimalMark; readonly asFraction: number; readonly asThousands: number };

const GROUPED_BY_SPACES = /^\d{1,3}(?:['\u2019\s\u00a0\u202f]\d{3})+(?:[.,]\d+)?$/u;
const GROUPED_BY_POINTS = /^\d{1,3}(?:\.\d{3})+,\d+$|^\d{1,3}(?:\.\d{3}){2,}$/;
const GROUPED_BY_COMMAS = /^\d{1,3}(?:,\d{3})+\.\d+$|^\d{1,3}(?:,\d{3}){2,}$/;

/**
 * A number as people write it: spaces, apostrophes, points or commas between groups of three digits, and a point or a comma
 * before the fraction. Null: it is none.
 */
export function readNumber(text: string): Written | null {
  if (GROUPED_BY_SPACES.test(text)) return readPlain(text.replaceAll(/['\u2019\s\u00a0\u202f]/gu, ""));
  if (GROUPED_BY_POINTS.test(text))
    return { value: Number(text.replaceAll(".", "").replace(",", ".")), decimal: "," };
  if (GROUPED_BY_COMMAS.test(text)) return { value: Number(text.replaceAll(",", "")), decimal: "." };
  if (!/^[1-9]\d{0,2}[.,]\d{3}$/.test(text)) return readPlain(text);
  return {
    mark: text.includes(",") ? "," : ".",
    asFraction: Number(text.replace(",", ".")),
    asThousands: Number(text.replace(/[.,]/, "")),
  };
}

/** Digits without groups, perhaps with a fraction. */
function readPlain(text: string): Written | null {
  const [whole, mark] = /^(?:\d+|\d*([.,])\d+)$/.exec(text) ?? [];
  if (whole === undefined) return null;
  return { value: Number(whole.replace(",", ".")), decimal: (mark ?? null) as DecimalMark | null };
}

/** The decimal mark of a sheet: that of all its numbers that show theirs; null where none does, or one says otherwise. */
export function settleDecimalMark(numbers: readonly string[]): DecimalMark | null {
  const marks = new Set(
    numbers.flatMap((text) => {
      const read = readNumber(text);
      return read !== null && "value" in read && read.decimal !== null ? [read.decimal] : [];
    }),
  );
  const [mark = null] = marks;
  return marks.size === 1 ? mark : null;
}
