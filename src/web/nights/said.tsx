import type { ComponentChildren } from "preact";
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
  readonly children?: ComponentChildren;
}

/** A sentence about the last press: what was done, with the way back, or why it was not. */
export function Said({ done, refused, isBusy, forget, children }: SaidProps) {
  return (
    <div class="said-place">
      <div role="status">
        {done && !refused && (
          <p class="said">
            <span>{done.text}</span>
            {done.undo && (
              <button type="button" class="big-button" disabled={isBusy} onClick={done.undo}>
                Undo
              </button>
            )}
            <button type="button" class="quiet-button" onClick={forget}>
              Good
            </button>
          </p>
        )}
      </div>
      <div role="alert">
        {refused && (
          <div class="said said-no">
            <Why problem={refused} />
            {children}
            <button type="button" class="quiet-button" onClick={forget}>
              Close
            </button>
          </div>
        )}
      </div>
    </div>
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
