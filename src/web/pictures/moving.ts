import type { PlanView } from "../plan/plan-view.ts";
import type { Stage } from "./stage.ts";

/** Layout seconds that an arrow key moves; finer once people look closely. */
function arrowStep(view: PlanView): number {
  const { fromMs, toMs } = view.window.value;
  const shown = view.clocks.toLayoutSeconds(toMs) - view.clocks.toLayoutSeconds(fromMs);
  return shown > 2 * 3_600 ? 60 : 10;
}

/** Where a key takes the moment, in ms; null for a key that moves nothing. */
function target(view: PlanView, event: KeyboardEvent): number | null {
  const step = (event.shiftKey ? 10 : 1) * arrowStep(view);
  const from = view.clocks.toLayoutSeconds(view.moment.value);
  const { fromMs, toMs } = view.window.value;
  switch (event.key) {
    case "ArrowRight":
      return view.clocks.toMs((Math.floor(from / step + 1e-6) + 1) * step);
    case "ArrowLeft":
      return view.clocks.toMs((Math.ceil(from / step - 1e-6) - 1) * step);
    case "PageUp":
      return view.clocks.toMs(from + 10 * step);
    case "PageDown":
      return view.clocks.toMs(from - 10 * step);
    case "Home":
      return fromMs;
    case "End":
      return toMs;
    default:
      return null;
  }
}

/** Keys on a picture: arrows, page keys, Home and End move the moment; plus and minus look closer and wider. */
export function onPictureKey(view: PlanView, event: KeyboardEvent): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const ms = target(view, event);
  if (ms !== null) view.moveTo(ms);
  else if (event.key === "+") view.zoom(0.5);
  else if (event.key === "-") view.zoom(2);
  else if (event.key === "0") view.showWhole();
  else return;
  event.preventDefault();
}

/** A finger has to move this far sideways before it is dragging and not scrolling; px. */
const DRAG_PX = 6;

/**
 * Pointer on a picture. A mouse or pen moves the moment as soon as it presses; a finger taps or drags sideways, since
 * the same finger scrolls the page.
 */
export function pointerMoving(view: PlanView, stage: Stage) {
  let startX = 0;
  let mode: "idle" | "undecided" | "dragging" = "idle";
  const moveTo = (event: PointerEvent) => {
    const plot = event.currentTarget as HTMLElement;
    view.moveTo(stage.x.value.invert(event.clientX - plot.getBoundingClientRect().left));
  };
  return {
    onPointerDown: (event: PointerEvent) => {
      if (event.button !== 0) return;
      startX = event.clientX;
      mode = event.pointerType === "touch" ? "undecided" : "dragging";
      if (mode === "undecided") return;
      (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
      moveTo(event);
    },
    onPointerMove: (event: PointerEvent) => {
      if (mode === "undecided" && Math.abs(event.clientX - startX) > DRAG_PX) mode = "dragging";
      if (mode === "dragging") moveTo(event);
    },
    onPointerUp: (event: PointerEvent) => {
      if (mode === "undecided") moveTo(event);
      mode = "idle";
    },
    onPointerCancel: () => {
      mode = "idle";
    },
  };
}
