import type { LoadReport } from "../../../shared/check.ts";
import { look } from "../plan/emphasis.ts";
import { amps } from "../plan/figures.ts";
import { useLooking } from "./stage.ts";

/** Shares shown one by one; the rest together. */
const MOST_SHARES = 8;

/** Who makes up the peak: a bar cut by train, largest first, with the limit as its full width. */
export function PeakShares({ load }: { readonly load: LoadReport }) {
  const { view } = useLooking();
  const emphasis = view.emphasis.value;
  const ordered = [...load.shares].sort((a, b) => b.ma - a.ma || (a.train < b.train ? -1 : 1));
  const shown = ordered.slice(0, MOST_SHARES);
  const rest = ordered.slice(MOST_SHARES).reduce((sum, { ma }) => sum + ma, 0);
  const full = Math.max(load.limitMa, load.peakMa);
  const width = (ma: number) => ({ width: `${(100 * ma) / full}%` });
  return (
    <div class="shares">
      <div class="shares-bar" aria-hidden="true">
        {shown.map(({ train, ma }) => (
          <span key={train} class={`share ${look(emphasis, train)}`} style={width(ma)} />
        ))}
        {rest > 0 && <span class="share" style={width(rest)} />}
        {load.constantMa > 0 && <span class="share share-constant" style={width(load.constantMa)} />}
      </div>
      <p class="shares-words">
        <span class="shares-lead">At the peak</span>{" "}
        {shown.map(({ train, ma }) => (
          <span key={train} class={`share-word ${look(emphasis, train)}`}>
            <b>{train}</b> {amps(ma)}
          </span>
        ))}
        {rest > 0 && (
          <span class="share-word">
            <b>{ordered.length - MOST_SHARES} more</b> {amps(rest)}
          </span>
        )}
        {load.constantMa > 0 && (
          <span class="share-word">
            <b>accessories</b> {amps(load.constantMa)}
          </span>
        )}
      </p>
    </div>
  );
}
