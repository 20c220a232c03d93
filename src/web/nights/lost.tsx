import { useEffect, useState } from "preact/hooks";
import type { Problem } from "../api/problem.ts";

interface LostProps {
  readonly isLost: boolean;
  /** Why the last fresh look failed; null where it did not. */
  readonly problem: Problem | null;
  readonly again: () => void;
}

/** Says that what is shown may be old, since when, and that it catches up by itself. */
export function Lost({ isLost, problem, again }: LostProps) {
  const [since, setSince] = useState("");
  const isStale = isLost || problem !== null;
  useEffect(() => {
    if (isStale) setSince(new Date().toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" }));
  }, [isStale]);
  return (
    <div role="status">
      {isStale && (
        <p class="said lost">
          <span>
            <strong>The connection is lost{since && ` since ${since}`}.</strong> What you see may be old; the
            page catches up by itself once the service answers again.
          </span>
          <button type="button" class="big-button" onClick={again}>
            Try now
          </button>
        </p>
      )}
    </div>
  );
}
