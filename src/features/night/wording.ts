/** `a`, `a and b`, `a, b and c`. */
export const listed = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`;

/** mA as people read amps: `2.90 A`, below an ampere `450 mA`. */
export const amps = (ma: number): string =>
  ma < 1_000 ? `${Math.round(ma)} mA` : `${(ma / 1_000).toFixed(2)} A`;
