import { useEffect, useRef, useState } from "preact/hooks";
import { checkSlot } from "../api/service.ts";
import { useLoad } from "../api/use-load.ts";
import { VerdictMark } from "../shell/marks.tsx";

interface SlotVerdictProps {
  readonly club: string;
  readonly session: string;
  readonly slot: string;
}

/** The slot's verdict, asked for once its row comes into sight: a long list does not check every night at once. */
export function SlotVerdict(props: SlotVerdictProps) {
  const row = useRef<HTMLDivElement>(null);
  const [isSeen, setSeen] = useState(false);
  useEffect(() => {
    const watcher = new IntersectionObserver((entries) => {
      if (entries.some((entry) => entry.isIntersecting)) setSeen(true);
    });
    if (row.current) watcher.observe(row.current);
    return () => watcher.disconnect();
  }, []);
  return (
    <div ref={row} class="slot-verdict">
      {isSeen ? <Verdict {...props} /> : <span class="quiet">Not checked yet</span>}
    </div>
  );
}

function Verdict({ club, session, slot }: SlotVerdictProps) {
  const load = useLoad(`${club} ${session} ${slot}`, (signal) => checkSlot({ club, session, slot }, signal));
  switch (load.status) {
    case "ready":
      return (
        <>
          <VerdictMark verdict={load.value.verdict} /> {load.value.headline}
        </>
      );
    case "loading":
      return <span class="quiet">Checking …</span>;
    case "failed":
      return (
        <>
          <span>Could not be checked: {load.problem.happened}</span>{" "}
          <button type="button" onClick={load.again}>
            Try again
          </button>
        </>
      );
    case "stopped":
      return (
        <button type="button" onClick={load.again}>
          Check it
        </button>
      );
  }
}
