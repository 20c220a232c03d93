import { useId, useRef, useState } from "preact/hooks";

interface CopyLineProps {
  readonly label: string;
  readonly value: string;
  /** What to know of it: how long it holds, that it is not shown again. */
  readonly hint?: string;
}

/** Something to take elsewhere, with a button that copies it; where the browser refuses, it is marked to be copied. */
export function CopyLine({ label, value, hint }: CopyLineProps) {
  const id = useId();
  const line = useRef<HTMLInputElement>(null);
  const [said, setSaid] = useState("");
  const copy = async () => {
    line.current?.select();
    try {
      await navigator.clipboard.writeText(value);
      setSaid("Copied.");
    } catch {
      // a page without TLS has no clipboard; what is marked can still be copied
      setSaid("It is marked now: copy it with the keyboard or by a long press.");
    }
  };
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {hint && (
        <p class="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <div class="copy-line">
        <input id={id} ref={line} readOnly value={value} aria-describedby={hint && `${id}-hint`} />
        <button type="button" onClick={copy}>
          Copy
        </button>
      </div>
      <p class="field-hint" role="status">
        {said}
      </p>
    </div>
  );
}
