/** One thing wrong with a plan: where (JSON pointer into the plan) and what to do. */
export interface PlanFault {
  readonly pointer: string;
  readonly detail: string;
}

/** The codes of one kind of record with their place in the list, for turning references into indexes. */
export interface CodeIndex {
  readonly kind: string;
  readonly positions: ReadonlyMap<string, number>;
}

/** Indexes a list by code; a code that comes twice is a fault. */
export function indexCodes(
  kind: string,
  pointer: string,
  records: readonly { readonly code: string }[],
  faults: PlanFault[],
): CodeIndex {
  const positions = new Map<string, number>();
  records.forEach(({ code }, i) => {
    const first = positions.get(code);
    if (first === undefined) positions.set(code, i);
    else
      faults.push({
        pointer: `${pointer}/${i}/code`,
        detail: `The ${kind} ${code} stands here a second time (first at position ${first}): give one of them another code.`,
      });
  });
  return { kind, positions };
}

const NAMED_AT_MOST = 8;

/** The index of a code; −1 with a fault where there is none. */
export function resolve(index: CodeIndex, code: string, pointer: string, faults: PlanFault[]): number {
  const found = index.positions.get(code);
  if (found !== undefined) return found;
  const known = [...index.positions.keys()];
  const named = known.slice(0, NAMED_AT_MOST).join(", ");
  const others =
    known.length === 0
      ? `the plan has no ${index.kind} at all`
      : `use one of ${named}${known.length > NAMED_AT_MOST ? " …" : ""}`;
  faults.push({ pointer, detail: `There is no ${index.kind} ${code}: add it, or ${others}.` });
  return -1;
}

/** As `resolve`; −1 without a fault where nothing is referred to. */
export function resolveOptional(
  index: CodeIndex,
  code: string | null,
  pointer: string,
  faults: PlanFault[],
): number {
  return code === null ? -1 : resolve(index, code, pointer, faults);
}
