const MOST_LETTERS = 40;

/** `wanted`, or one that begins like it and is not among those taken, with a number behind it. */
export function freeCode(wanted: string, taken: ReadonlySet<string>): string {
  for (let n = 1; ; n++) {
    const tail = n === 1 ? "" : `-${n}`;
    const code = [...wanted].slice(0, MOST_LETTERS - tail.length).join("") + tail;
    if (!taken.has(code)) return code;
  }
}
