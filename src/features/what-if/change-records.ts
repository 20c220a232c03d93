import type { RecordChanges } from "../../../shared/what-if.ts";
import type { ClubParts } from "../../database/records/read-plan.ts";

interface Coded {
  readonly code: string;
}

/**
 * The club's records with the changes: what is named by its code is replaced where it stands, the rest added at the end,
 * what is removed left out. Whether they fit together is for the check to say. Cost: linear.
 */
export function changeRecords(parts: ClubParts, changes: RecordChanges): ClubParts {
  const { removed, policy } = changes;
  const lists = <Lists extends object>(stored: Lists, brought: Lists): Lists =>
    Object.fromEntries(
      (Object.keys(stored) as (keyof Lists & string)[]).map((kind) => [
        kind,
        merged(
          stored[kind] as readonly Coded[],
          (brought[kind] ?? []) as readonly Coded[],
          (removed as Readonly<Record<string, readonly string[]>>)[kind] ?? [],
        ),
      ]),
    ) as Lists;
  return {
    ...parts,
    policy: policy ?? parts.policy,
    layout: lists(parts.layout, changes.layout),
    roster: lists(parts.roster, changes.roster),
    ...lists({ handsets: parts.handsets }, { handsets: changes.handsets }),
  };
}

function merged<Record extends Coded>(
  stored: readonly Record[],
  brought: readonly Record[],
  removed: readonly string[],
): Record[] {
  const by = new Map(brought.map((record) => [record.code, record]));
  const gone = new Set(removed);
  const kept = stored.map((record) => by.get(record.code) ?? record);
  const known = new Set(stored.map(({ code }) => code));
  return [...kept, ...brought.filter(({ code }) => !known.has(code))].filter(({ code }) => !gone.has(code));
}
