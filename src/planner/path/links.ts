import type { Link } from "../problem.ts";

/** Which sections join, for asking in constant time. */
export type LinkIndex = ReadonlySet<string>;

/** Sections are numbers or codes: whatever the links name them by. Cost O(links). */
export function indexLinks<Id extends string | number>(
  links: readonly { readonly from: Id; readonly to: Id; readonly oneWay: boolean }[],
): LinkIndex {
  const index = new Set<string>();
  for (const link of links) {
    index.add(`${link.from}>${link.to}`);
    if (!link.oneWay) index.add(`${link.to}>${link.from}`);
  }
  return index;
}

/** Whether a train may pass from one section straight into the other; the same one named again is a reversal. */
export function joins(index: LinkIndex, from: Link["from"] | string, to: Link["to"] | string): boolean {
  return from === to || index.has(`${from}>${to}`);
}
