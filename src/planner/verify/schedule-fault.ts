/** What is wrong with a schedule. `atMs`: a moment at which it is. */
export interface ScheduleFault {
  readonly kind:
    | "selector-does-not-reach"
    | "turned-to-where-it-is"
    | "turned-twice-at-once"
    | "turned-in-use"
    | "moves-unfed"
    | "two-outputs-under-train"
    | "two-trains-on-output"
    | "output-over-rating"
    | "parked-stock-fed"
    | "parked-stock-driven"
    | "output-meets-digital";
  readonly section: number;
  readonly train: number;
  readonly atMs: number;
}
