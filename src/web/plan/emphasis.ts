import type { KeyedFinding } from "./finding-key.ts";

/** What the chosen finding is about; in every picture these stand out. */
export interface Emphasis {
  /** Position of each train in the finding: it decides the train's line and colour. */
  readonly trains: ReadonlyMap<string, number>;
  readonly sections: ReadonlySet<string>;
}

export function toEmphasis(chosen: KeyedFinding | null): Emphasis {
  const { trains = [], sections = [] } = chosen?.finding ?? {};
  return { trains: new Map(trains.map((train, i) => [train, i])), sections: new Set(sections) };
}

/** Lines drawn out of the crowd have this many looks; further trains share the last. */
const LOOKS = 4;

/** Class of an emphasised train's mark, by its position in the finding; empty for any other train. */
export function look(emphasis: Emphasis, train: string): string {
  const position = emphasis.trains.get(train);
  return position === undefined ? "" : `look-${Math.min(position, LOOKS - 1) + 1}`;
}
