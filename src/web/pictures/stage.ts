import { computed, type ReadonlySignal, signal } from "@preact/signals";
import { scaleLinear } from "d3-scale";
import { createContext } from "preact";
import { useContext } from "preact/hooks";
import type { TimeWindow } from "../charts/ticks.ts";
import type { PlanView } from "../plan/plan-view.ts";

/** Below this width of the column the pictures give up their gutter and write names inside. */
const NARROW_PX = 560;

/** The column all pictures stand in: they share its width, so one moment lies on one upright line through all. */
export class Stage {
  readonly width = signal(0);
  readonly isNarrow: ReadonlySignal<boolean> = computed(() => this.width.value < NARROW_PX);
  /** Where the plots begin and end, in px. */
  readonly left: ReadonlySignal<number> = computed(() => (this.isNarrow.value ? 48 : 116));
  readonly right: ReadonlySignal<number> = computed(() => this.width.value - 20);
  readonly x: ReadonlySignal<TimeScale>;

  constructor(window: ReadonlySignal<TimeWindow>) {
    this.x = computed(() => {
      const { fromMs, toMs } = window.value;
      return scaleLinear([fromMs, toMs], [this.left.value, this.right.value]);
    });
  }
}

/** From ms to px, and back by `invert`. */
export interface TimeScale {
  (ms: number): number;
  invert(px: number): number;
}

export interface Looking {
  readonly view: PlanView;
  readonly stage: Stage;
}

export const LookingContext = createContext<Looking | null>(null);

/** What the pictures of this page share; only inside a plan. */
export function useLooking(): Looking {
  const looking = useContext(LookingContext);
  if (!looking) throw new Error("A picture needs the plan it belongs to.");
  return looking;
}
