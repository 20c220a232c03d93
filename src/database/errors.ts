/** The few PostgreSQL conditions that features tell apart (PostgreSQL manual, appendix A). */
export const SQLSTATE = {
  exclusionViolation: "23P01",
  checkViolation: "23514",
  uniqueViolation: "23505",
  foreignKeyViolation: "23503",
  restrictViolation: "23001",
  invalidText: "22P02",
  serializationFailure: "40001",
  deadlockDetected: "40P01",
} as const;

interface DriverCause {
  readonly kind?: string;
  readonly originalCode?: string;
  readonly originalMessage?: string;
}

interface DriverError {
  readonly code?: unknown;
  readonly message?: unknown;
  readonly cause?: DriverCause;
  readonly meta?: { readonly driverAdapterError?: { readonly cause?: DriverCause } };
}

/** PostgreSQL's own five-character code of a failure that came through the client, if it has one. */
export function sqlstate(error: unknown): string | undefined {
  return driverCause(error)?.originalCode;
}

/** Name of the constraint that refused a change, read from PostgreSQL's message; undefined for any other failure. */
export function violatedConstraint(error: unknown): string | undefined {
  const message = driverCause(error)?.originalMessage ?? "";
  return /constraint "([^"]+)"/.exec(message)?.[1];
}

// our own, raised by triggers with a sentence for people
const NIGHT_IS_HELD = "RF002";

/** What rests on a record that was to change, as the database says it; undefined for any other failure. */
export function heldSentence(error: unknown): string | undefined {
  return sqlstate(error) === NIGHT_IS_HELD ? driverCause(error)?.originalMessage : undefined;
}

const LEAVES_NO_SECRETARY = "RF004";

/** Whether a change was refused because nobody could give roles in the club any more. */
export const leavesNoSecretary = (error: unknown): boolean => sqlstate(error) === LEAVES_NO_SECRETARY;

/**
 * Whether a transaction lost against another and may simply be run again. A conflict found at a statement, at one of
 * our own SQL, and at commit look different.
 */
export function isWriteConflict(error: unknown): boolean {
  const { code, cause } = asDriverError(error);
  if (code === "P2034" || cause?.kind === "TransactionWriteConflict") return true;
  const state = sqlstate(error);
  return state === SQLSTATE.serializationFailure || state === SQLSTATE.deadlockDetected;
}

/** Whether a record to be read, changed or removed by its key was not there. */
export const isRecordMissing = (error: unknown): boolean => asDriverError(error).code === "P2025";

/** Whether no connection to the database could be made, kept, or had in time. */
export function isUnavailable(error: unknown): boolean {
  const { code, message, cause } = asDriverError(error);
  if (UNREACHABLE.has(String(code)) || UNREACHABLE.has(sqlstate(error) ?? "")) return true;
  if (cause !== undefined && cause !== error && isUnavailable(cause)) return true;
  return UNREACHED.test(String(message));
}

// the last is a P2028, which can also be a bug of ours
const UNREACHED =
  /Can't reach database server|Connection terminated|timeout exceeded when trying to connect|is not queryable|Unable to start a transaction in the given time/;

// system calls; Prisma's P1001, P1002, P1008, P1017 and P2024; PostgreSQL's operator intervention and too many clients
const UNREACHABLE: ReadonlySet<string> = new Set([
  ...["ECONNREFUSED", "ECONNRESET", "ENOENT", "ENOTFOUND", "EPIPE", "ETIMEDOUT", "EHOSTUNREACH", "EAI_AGAIN"],
  ...["P1001", "P1002", "P1008", "P1017", "P2024"],
  ...["57P01", "57P02", "57P03", "53300"],
]);

function driverCause(error: unknown): DriverCause | undefined {
  const { meta, cause } = asDriverError(error);
  return meta?.driverAdapterError?.cause ?? cause;
}

function asDriverError(error: unknown): DriverError {
  return typeof error === "object" && error !== null ? (error as DriverError) : {};
}
