import { type ReadonlySignal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { NightClock } from "../../../shared/night.ts";
import { readingAfter } from "./reading.ts";

const TICK_MS = 1_000;

/**
 * What the layout clock shows, in seconds, moving by itself. It goes by how long ago the service said so, so that a
 * device whose own clock is wrong shows the same as any other.
 * @param receivedAt when the reading came, by this device's clock
 */
export function useLayoutNow(clock: NightClock, receivedAt: number): ReadonlySignal<number> {
  const now = useSignal(clock.layoutSeconds);
  useEffect(() => {
    const tick = () => {
      now.value = readingAfter(clock, Date.now() - receivedAt);
    };
    tick();
    if (clock.state !== "running") return;
    const timer = setInterval(tick, TICK_MS);
    return () => clearInterval(timer);
  }, [clock, receivedAt, now]);
  return now;
}
