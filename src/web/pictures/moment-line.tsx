import { useLooking } from "./stage.ts";

/** The moment as an upright line across a plot; nothing while the window is elsewhere. */
export function MomentLine({ height }: { readonly height: number }) {
  const { view, stage } = useLooking();
  const { fromMs, toMs } = view.window.value;
  const moment = view.moment.value;
  if (moment < fromMs || moment > toMs) return null;
  const x = stage.x.value(moment);
  return <line class="moment-line" data-moment={moment} x1={x} x2={x} y1="0" y2={height} />;
}

/** The chosen finding's span as a band behind the marks. */
export function FindingBand({ height }: { readonly height: number }) {
  const { view, stage } = useLooking();
  const finding = view.chosen.value?.finding;
  if (!finding) return null;
  const { fromMs, toMs } = view.window.value;
  const from = Math.max(fromMs, finding.span.startMs);
  const to = Math.min(toMs, finding.span.endMs);
  if (from >= to) return null;
  const x = stage.x.value;
  const width = Math.max(2, x(to) - x(from));
  return (
    <rect class={`finding-band band-${finding.severity}`} x={x(from)} y="0" width={width} height={height} />
  );
}
