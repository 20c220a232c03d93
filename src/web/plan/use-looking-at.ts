import type { RefObject } from "preact";
import { useEffect, useLayoutEffect, useMemo, useRef } from "preact/hooks";
import type { CheckReport } from "../../../shared/check.ts";
import { type Looking, Stage } from "../pictures/stage.ts";
import { keepAddress } from "./keep-address.ts";
import { PlanView } from "./plan-view.ts";

/**
 * A report to look at: one moment and window for all pictures, kept in the address bar; their width is that of the
 * element `column` is put on. `also` is what else the address says, `try=…`.
 */
export function useLookingAt(
  report: CheckReport,
  timeZone: string,
  also = "",
): { readonly looking: Looking; readonly column: RefObject<HTMLDivElement | null> } {
  const looking = useMemo(() => {
    const view = new PlanView(report, timeZone, location.search, also);
    return { view, stage: new Stage(view.window) };
  }, [report, timeZone, also]);
  useEffect(() => keepAddress(looking.view), [looking]);
  const column = useRef<HTMLDivElement>(null);
  const { width } = looking.stage;
  useLayoutEffect(() => {
    const element = column.current;
    if (!element) return;
    const measure = () => {
      width.value = Math.floor(element.clientWidth);
    };
    measure();
    const watcher = new ResizeObserver(measure);
    watcher.observe(element);
    return () => watcher.disconnect();
  }, [width]);
  return { looking, column };
}
