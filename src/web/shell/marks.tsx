import type { CheckReport } from "../../../shared/check.ts";
import type { Severity } from "../../../shared/vocabulary.ts";

const SEVERITY_WORDS = { stops: "Stops", warns: "Warns" } as const satisfies Record<Severity, string>;

/** A finding's severity by shape and word: a filled square that stops, an open triangle that warns. */
export function SeverityMark({ severity }: { readonly severity: Severity }) {
  return (
    <span class={`mark mark-${severity}`}>
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        {severity === "stops" ? (
          <>
            <rect class="mark-shape" x="1" y="1" width="14" height="14" rx="1.5" />
            <path class="mark-sign" d="M4 8H12" />
          </>
        ) : (
          <>
            <path class="mark-shape" d="M8 1.5 15 14.5H1z" />
            <path class="mark-sign" d="M8 6v4M8 11.7v1.3" />
          </>
        )}
      </svg>
      {SEVERITY_WORDS[severity]}
    </span>
  );
}

/** The verdict's mark: a disc with a tick for a night that runs, the square that stops for one that does not. */
export function VerdictMark({
  verdict,
  size = 18,
}: {
  readonly verdict: CheckReport["verdict"];
  readonly size?: number;
}) {
  return (
    <svg
      class={`verdict-mark verdict-${verdict}`}
      viewBox="0 0 16 16"
      width={size}
      height={size}
      aria-hidden="true"
    >
      {verdict === "runs" ? (
        <>
          <circle class="mark-shape" cx="8" cy="8" r="7" />
          <path class="mark-sign" d="M4.5 8.5 7 11l4.5-5.5" />
        </>
      ) : (
        <>
          <rect class="mark-shape" x="1" y="1" width="14" height="14" rx="1.5" />
          <path class="mark-sign" d="M4 8H12" />
        </>
      )}
    </svg>
  );
}
