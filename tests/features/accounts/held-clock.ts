import type { Clock } from "../../../src/lib/clock.ts";

/** A clock that stands still until it is told to move. */
export function heldClock(start: string): Clock & { pass(ms: number): void } {
  let ms = Date.parse(start);
  return {
    now: () => new Date(ms),
    pass: (more) => {
      ms += more;
    },
  };
}
