const MOST_LETTERS = 36;

/**
 * A short code for a new member: the initials, `af` for Ada Fenwright, and with a number where someone has them
 * already. Empty where the name has no letter or digit.
 */
export function suggestCode(name: string, taken: ReadonlySet<string>): string {
  const words = name.split(/[^\p{L}\p{N}]+/u).filter(Boolean);
  const base = words
    .map((word) => [...word][0] ?? "")
    .join("")
    .toLowerCase()
    .slice(0, MOST_LETTERS);
  if (base === "" || !taken.has(base)) return base;
  for (let n = 2; ; n++) if (!taken.has(`${base}${n}`)) return `${base}${n}`;
}
