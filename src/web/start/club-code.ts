const MOST_LETTERS = 40;

/** A short name for a club's addresses, `oakwater-vale-circle`; empty where the name has no letter or digit. */
export const clubCode = (name: string) =>
  name
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean)
    .join("-")
    .slice(0, MOST_LETTERS)
    .replace(/-$/, "");
