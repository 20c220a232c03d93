import { setImmediate } from "node:timers/promises";

/**
 * Gives way to whatever else waits for this process: requests that have come in meanwhile are served before it goes on. For
 * work that is made of many long pieces, between them.
 */
export const othersTurn = (): Promise<void> => setImmediate();
