import { effect } from "@preact/signals";
import type { PlanView } from "./plan-view.ts";

/** Browsers refuse more than about 100 changes of address in 30 seconds. */
const SETTLE_MS = 300;

/**
 * Keeps the address bar at what is being looked at. Choosing a first finding is a step that "back" undoes; everything
 * after it replaces the address, so that "back" is never worn out by looking around. Ends with the returned function.
 */
export function keepAddress(view: PlanView): () => void {
  const path = location.pathname;
  let hadFinding = view.chosen.peek() !== null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const write = (how: "pushState" | "replaceState") => {
    clearTimeout(timer);
    const search = view.search.peek();
    if (location.pathname !== path || search === location.search) return;
    history[how](null, "", `${path}${search}${how === "pushState" ? "" : location.hash}`);
  };
  const stop = effect(() => {
    view.search.value;
    const hasFinding = view.chosen.value !== null;
    const isFirst = hasFinding && !hadFinding;
    hadFinding = hasFinding;
    if (isFirst) write("pushState");
    else {
      clearTimeout(timer);
      timer = setTimeout(() => write("replaceState"), SETTLE_MS);
    }
  });
  const back = () => {
    if (location.pathname !== path) return;
    view.follow(location.search);
    hadFinding = view.chosen.peek() !== null;
    clearTimeout(timer);
  };
  addEventListener("popstate", back);
  return () => {
    clearTimeout(timer);
    stop();
    removeEventListener("popstate", back);
  };
}
