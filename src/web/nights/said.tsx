import { useEffect } from "preact/hooks";
import type { Problem } from "../api/problem.ts";

/** What was done last, and how to undo it. */
export interface Done {
  readonly text: string;
  readonly undo?: (() => void) | undefined;
}

interface SaidProps {
  readonly done: Done | null;
  readonly refused: Problem | null;
  readonly isBusy: boolean;
  readonly forget: () => void;
}

/** How long a sentence stays that nothing can be done about: two readings of one of twenty words. */
const PASSING_MS = 10_000;

/**
 * What became of the last press, at the foot of the window where a thumb reaches it: what was done, with the way back,
 * or why it was not. Buttons stay as they are while one waits, so that the keyboard keeps its place.
 */
export function Said({ done, refused, isBusy, forget }: SaidProps) {
  const isPassing = done !== null && done.undo === undefined && refused === null;
  useEffect(() => {
    if (!isPassing) return;
    const timer = setTimeout(forget, PASSING_MS);
    return () => clearTimeout(timer);
  }, [isPassing, done]);
  const isShown = done !== null || refused !== null;
  return (
    <div class={`said-place ${isShown ? "said-place-full" : ""}`}>
      {isBusy && <div class="busy-bar" aria-hidden="true" />}
      <div role="status">
        {done && !refused && (
          <p class="said">
            <span>{done.text}</span>
            <span class="said-do">
              {done.undo && (
                <button type="button" class="big-button" onClick={done.undo}>
                  Undo
                </button>
              )}
              <Close forget={forget} />
            </span>
          </p>
        )}
      </div>
      <div role="alert">
        {refused && (
          <div class="said said-no">
            <Why problem={refused} />
            <Close forget={forget} />
          </div>
        )}
      </div>
    </div>
  );
}

function Close({ forget }: { readonly forget: () => void }) {
  return (
    <button type="button" class="close-button" aria-label="Close this message" onClick={forget}>
      ×
    </button>
  );
}

/** Why something was refused, and what to do. */
export function Why({ problem }: { readonly problem: Problem }) {
  return (
    <div>
      <p>
        <strong>{problem.detail || problem.happened}</strong>
      </p>
      {problem.remedies.map((remedy) => (
        <p key={remedy}>{remedy}</p>
      ))}
    </div>
  );
}
