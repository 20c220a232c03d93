import { useEffect, useState } from "preact/hooks";
import type { Club } from "../../../shared/clubs.ts";
import type { TrailEntry } from "../../../shared/trail.ts";
import { listTrail } from "../api/trail.ts";
import { useEvents } from "../api/use-events.ts";
import { FirstAnswer } from "../nights/first-answer.tsx";
import { Lost } from "../nights/lost.tsx";
import { useCurrent } from "../nights/use-current.ts";
import { Refused } from "../shell/refused.tsx";
import { useSubmit } from "../shell/use-submit.ts";
import { dayBegins, dayEnds, type TrailAddress } from "./trail-address.ts";
import { TrailRow } from "./trail-row.tsx";

interface TrailListProps {
  readonly club: Club;
  readonly filter: TrailAddress;
  /** Called with the entries that are shown. */
  readonly onShown: (entries: readonly TrailEntry[]) => void;
  readonly onPerson: (person: string) => void;
}

/** The latest of a part of the trail, fresh, and older ones as far as one asks for them. */
export function TrailList({ club, filter, onShown, onPerson }: TrailListProps) {
  const asked = {
    ...filter,
    from: dayBegins(filter.from, club.timeZone),
    to: dayEnds(filter.to, club.timeZone),
  };
  const latest = useCurrent(JSON.stringify(asked), (signal) => listTrail(club.code, asked, null, signal));
  const { isLost } = useEvents(club.code, { refresh: latest.refresh });
  const [older, setOlder] = useState<{ items: readonly TrailEntry[]; next: string | null } | null>(null);
  useEffect(() => onShown(latest.value?.items ?? []), [latest.value, onShown]);
  useEffect(() => onShown(older?.items ?? []), [older, onShown]);
  const more = useSubmit(async (cursor: string) => {
    const page = await listTrail(club.code, asked, cursor, new AbortController().signal);
    setOlder((known) => ({ items: [...(known?.items ?? []), ...page.items], next: page.next }));
  });
  return (
    <>
      <Lost isLost={isLost} problem={latest.value ? latest.problem : null} again={latest.refresh} />
      <FirstAnswer current={latest} what="Reading the trail">
        {(first) => {
          const entries = uniqueBySeq([...first.items, ...(older?.items ?? [])]);
          const next = older ? older.next : first.next;
          return (
            <>
              {entries.length === 0 && <p class="quiet">Nothing of the kind was changed.</p>}
              <ol class="trail">
                {entries.map((entry) => (
                  <TrailRow key={entry.seq} entry={entry} timeZone={club.timeZone} onPerson={onPerson} />
                ))}
              </ol>
              <Refused problem={more.problem} />
              {next !== null && (
                <button type="button" class="tall" disabled={more.isBusy} onClick={() => void more.run(next)}>
                  {more.isBusy ? "Reading …" : "Show older ones"}
                </button>
              )}
            </>
          );
        }}
      </FirstAnswer>
    </>
  );
}

/** What moved from the first page to a later one while it was read is shown once. */
const uniqueBySeq = (entries: readonly TrailEntry[]) => [
  ...new Map(entries.map((entry) => [entry.seq, entry])).values(),
];
