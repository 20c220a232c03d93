import { useState } from "preact/hooks";

interface ForGoodProps {
  /** `Revoke`. */
  readonly word: string;
  /** What it is done to, for who cannot see the row: `the token Backup`. */
  readonly what: string;
  readonly isBusy: boolean;
  readonly onSure: () => void;
}

/** A button for what cannot be undone: the first press says so, the second does it. */
export function ForGood({ word, what, isBusy, onSure }: ForGoodProps) {
  const [isAsking, setAsking] = useState(false);
  if (!isAsking)
    return (
      <button type="button" aria-label={`${word} ${what}`} onClick={() => setAsking(true)}>
        {word} …
      </button>
    );
  return (
    <span class="for-good">
      <button
        type="button"
        class="grave"
        disabled={isBusy}
        aria-label={`${word} ${what} for good`}
        // the press that asked left the focus on a button that is gone
        ref={(button) => button?.focus()}
        onClick={() => {
          setAsking(false);
          onSure();
        }}
      >
        {word} for good
      </button>
      <button type="button" aria-label={`Keep ${what}`} onClick={() => setAsking(false)}>
        Keep
      </button>
    </span>
  );
}
