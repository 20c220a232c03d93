import { useEffect, useRef } from "preact/hooks";
import { useLooking } from "../pictures/stage.ts";
import { FindingItem } from "./finding-item.tsx";
import type { PlanView } from "./plan-view.ts";

/** The findings, most pressing first. Arrow keys go through the list and choose; Escape chooses none. */
export function FindingsList() {
  const { view } = useLooking();
  const list = useRef<HTMLOListElement>(null);
  const chosen = view.chosen.value;
  useEffect(() => showChosen(list.current), []);
  if (view.findings.length === 0)
    return (
      <p class="quiet">
        Nothing stands in the way of this night. The pictures show how much room is left, the tightest first.
      </p>
    );
  return (
    <>
      <ol class="findings" ref={list} onKeyDown={(event) => onListKey(view, list.current, event)}>
        {view.findings.map((keyed) => (
          <FindingItem key={keyed.key} keyed={keyed} isChosen={keyed === chosen} />
        ))}
      </ol>
      {view.report.findingsLeftOut > 0 && (
        <p class="quiet">
          {view.report.complete ? "" : "At least "}
          {view.report.findingsLeftOut} more are not listed: clear these first.
        </p>
      )}
    </>
  );
}

/** Where the list scrolls by itself, a finding that the address names is brought into sight; the page stays put. */
function showChosen(list: HTMLElement | null): void {
  const column = list?.closest(".findings-column");
  const item = list?.querySelector<HTMLElement>(".finding-chosen");
  if (!column || !item) return;
  const above = item.getBoundingClientRect().top - column.getBoundingClientRect().top;
  const isHidden = above + item.offsetHeight > column.clientHeight;
  if (isHidden) column.scrollTop += above - column.clientHeight / 3;
}

function onListKey(view: PlanView, list: HTMLElement | null, event: KeyboardEvent): void {
  const buttons = [...(list?.querySelectorAll<HTMLButtonElement>("button.finding") ?? [])];
  const at = buttons.indexOf(event.target as HTMLButtonElement);
  if (at < 0) return;
  if (event.key === "Escape") view.choose(null);
  else {
    const to = destination(event.key, at, buttons.length - 1);
    if (to === null) return;
    view.choose(view.findings[to]?.key ?? null);
    bringFocus(buttons[to]);
  }
  event.preventDefault();
}

/** Where a key leads from place `at` in a list that ends at `last`; null for any other key. */
function destination(key: string, at: number, last: number): number | null {
  switch (key) {
    case "ArrowDown":
      return Math.min(last, at + 1);
    case "ArrowUp":
      return Math.max(0, at - 1);
    case "Home":
      return 0;
    case "End":
      return last;
    default:
      return null;
  }
}

/** Focus alone would scroll half a screen; this scrolls only as far as it takes to see the item. */
function bringFocus(button: HTMLButtonElement | undefined): void {
  button?.focus({ preventScroll: true });
  requestAnimationFrame(() => button?.parentElement?.scrollIntoView({ block: "nearest" }));
}
