import { AsyncLocalStorage } from "node:async_hooks";

// the one thing of the process that is not handed on: it follows a request through everything that request awaits
const acting = new AsyncLocalStorage<string | null>();

/** Runs `work`, and all that it starts, on behalf of a person: its changes carry their id. Null is nobody with an account. */
export const actingAs = <T>(personId: string | null, work: () => T): T => acting.run(personId, work);

/** The person on whose behalf the running code works. */
export const actingPerson = (): string | null => acting.getStore() ?? null;
