import { useRef } from "preact/hooks";
import { useLooking } from "../pictures/stage.ts";
import { FindingItem } from "./finding-item.tsx";

/** The findings, most pressing first. Arrow keys go through the list and choose; Escape chooses none. */
export function FindingsList() {
  const { view } = useLooking();
  const list = useRef<HTMLOListElement>(null);
  const chosen = view.chosen.value;
  if (view.findings.length === 0)
    return (
      <p class="quiet">
        Nothing stands in the way of this night. The pictures show how much room is left, the tightest first.
      </p>
    );
  const goTo = (index: number) => {
    const target = view.findings[Math.min(view.findings.length - 1, Math.max(0, index))];
    if (!target) return;
    view.choose(target.key);
    list.current
      ?.querySelectorAll<HTMLButtonElement>("button.finding")
      [view.findings.indexOf(target)]?.focus();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (!(event.target instanceof HTMLElement) || !event.target.matches("button.finding")) return;
    const buttons = [...(list.current?.querySelectorAll("button.finding") ?? [])];
    const at = buttons.indexOf(event.target);
    if (event.key === "ArrowDown") goTo(at + 1);
    else if (event.key === "ArrowUp") goTo(at - 1);
    else if (event.key === "Home") goTo(0);
    else if (event.key === "End") goTo(buttons.length - 1);
    else if (event.key === "Escape") view.choose(null);
    else return;
    event.preventDefault();
  };
  return (
    <>
      <ol class="findings" ref={list} onKeyDown={onKeyDown}>
        {view.findings.map((keyed) => (
          <FindingItem key={keyed.key} keyed={keyed} isChosen={keyed === chosen} />
        ))}
      </ol>
      {view.report.findingsLeftOut > 0 && (
        <p class="quiet">{view.report.findingsLeftOut} more are not listed: clear these first.</p>
      )}
    </>
  );
}
