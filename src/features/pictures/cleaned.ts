/** A picture without what it tells besides itself; or why it is none: it breaks off, or there is nothing to see in it. */
export type Cleaned = Buffer | "cut off" | "empty";
