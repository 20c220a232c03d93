/**
 * Why the service cannot start, in one sentence that says what to do about it. `server.ts` prints the message and
 * leaves with code 1; nothing else catches it.
 */
export class StartupError extends Error {
  override readonly name = "StartupError";
}
