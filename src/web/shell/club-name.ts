import { signal } from "@preact/signals";

/** Name of the club being looked at, once a page has read it: the header shows it. */
export const clubName = signal<string | null>(null);
