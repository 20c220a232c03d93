import { z } from "zod";

interface RefusalKind {
  /** HTTP status, RFC 9110 section 15 unless noted. */
  readonly status: number;
  readonly title: string;
  /** What the reader can do about it, whatever the details. */
  readonly remedy: string;
}

/** Every way in which the service says no. The code is stable: it ends the problem's type, `/problems/<code>`. */
export const REFUSALS = {
  "validation-failed": {
    status: 400,
    title: "Part of the request is not as it must be",
    remedy: "Correct each place named under errors; the API reference lists what every field takes.",
  },
  "malformed-json": {
    status: 400,
    title: "The body is not JSON",
    remedy: "Send one complete JSON value in UTF-8, or leave the body out where none is expected.",
  },
  "not-signed-in": {
    status: 401,
    title: "The service does not know who asks",
    remedy: "Sign in, or send a personal access token as `Authorization: Bearer …`.",
  },
  "wrong-sign-in": {
    status: 401,
    title: "E-mail address and password do not belong together",
    remedy: "Try again, or choose a new password by mail.",
  },
  "not-permitted": {
    status: 403,
    title: "Your roles in the club do not allow this",
    remedy: "Ask the club's secretary to do it, or to give you a role that may.",
  },
  "cross-site": {
    status: 403,
    title: "The request comes from a page of another site",
    remedy: "Use the service's own pages; a program sends a personal access token instead of a cookie.",
  },
  "not-found": {
    status: 404,
    title: "There is nothing here",
    remedy: "Check each part of the address, and the method; the API reference lists both.",
  },
  conflict: {
    status: 409,
    title: "This cannot stand beside what is recorded",
    remedy: "Read the records named and change one side or the other.",
  },
  "in-use": {
    status: 409,
    title: "Other records still refer to this one",
    remedy: "Change or remove the records named first.",
  },
  "duplicate-code": {
    status: 409,
    title: "The code is taken",
    remedy: "Choose a code that no other record of its kind in the club has.",
  },
  "version-issued": {
    status: 409,
    title: "An issued timetable version stays as it is",
    remedy: "Make a new version from it, change that one, and issue it in its turn.",
  },
  "night-not-running": {
    status: 409,
    title: "The night is not at a point where this is done",
    remedy: "Look at the state of its booking: a night is run from being locked until it is finished.",
  },
  "already-done": {
    status: 409,
    title: "It is so already",
    remedy: "Read the night again: someone else was first, or the press came twice.",
  },
  "handset-out": {
    status: 409,
    title: "The handset is not on the desk",
    remedy: "Take it back in first, or give out another.",
  },
  "locomotive-unsuitable": {
    status: 409,
    title: "The locomotive cannot take the place of the one that failed",
    remedy: "Choose one of the candidates that suit.",
  },
  taken: {
    status: 409,
    title: "Somebody else has it",
    remedy: "Wait for it in its queue, offer its driver a swap, or choose another.",
  },
  "drives-another-then": {
    status: 409,
    title: "The member has something else to do then",
    remedy: "Give the other back first, or choose one at another time.",
  },
  "walk-too-short": {
    status: 409,
    title: "There is not enough time to walk from one to the other",
    remedy: "Choose one that starts later, or nearer to where the other ends.",
  },
  "not-passed": {
    status: 409,
    title: "The member is not passed for it",
    remedy: "Choose another, or ask the secretary who can pass you for it.",
  },
  "junior-alone": {
    status: 409,
    title: "A junior needs a supervising adult in the same slot",
    remedy: "Let an adult claim a train or duty of the slot, or say that they come, first.",
  },
  "last-adult": {
    status: 409,
    title: "A junior would be left without a supervising adult",
    remedy: "Let another adult say that they come first, or ask the secretary.",
  },
  "handset-taken": {
    status: 409,
    title: "The handset is in other hands then, or its battery would not last",
    remedy: "Choose another that fits, or let the service choose.",
  },
  "handset-not-usable": {
    status: 409,
    title: "The handset cannot be used all along the run",
    remedy: "Choose one of those that the board names for the train, or let the service choose.",
  },
  "session-not-open": {
    status: 409,
    title: "The night is not open for claims",
    remedy: "Wait until the secretary opens it; once it is locked, ask the secretary.",
  },
  "second-claim-too-early": {
    status: 409,
    title: "A second train of this night is not to be had yet",
    remedy: "Come back at the time named, when everybody has had a first choice.",
  },
  "night-stopped": {
    status: 409,
    title: "Something stops the night",
    remedy: "Cure what is named, or open it with a reason, which is kept.",
  },
  "not-from-here": {
    status: 409,
    title: "The night cannot go there from where it is",
    remedy: "Read its booking again: mayMoveTo names where it can go.",
  },
  "last-secretary": {
    status: 409,
    title: "The club would be left without a secretary who can sign in",
    remedy: "Make another member with an account secretary first.",
  },
  "booking-holds": {
    status: 409,
    title: "Claims rest on this",
    remedy: "Let them be given back first, or leave this as it is.",
  },
  "version-mismatch": {
    status: 412,
    title: "The record has changed since it was read",
    remedy: "Read it again, repeat the change on what it is now, and send its new ETag as If-Match.",
  },
  "body-too-large": {
    status: 413,
    title: "The body is too large",
    remedy: "Send less at once: split an import, or leave out what the check does not need.",
  },
  "too-many-trains": {
    status: 413,
    title: "The plan has too many trains",
    remedy: "Leave trains out, or check the timetable in parts.",
  },
  "address-too-long": {
    status: 414,
    title: "The address is too long",
    remedy: "Shorten the codes and filters in the address.",
  },
  "headers-too-large": {
    status: 431,
    title: "The address and headers are too large",
    remedy: "Shorten the address, or send fewer and shorter headers.",
  },
  "request-too-slow": {
    status: 408,
    title: "The request did not arrive in time",
    remedy: "Send it again without pauses; split an import that is too much for the line.",
  },
  "unsupported-media-type": {
    status: 415,
    title: "The body is of a type not read here",
    remedy:
      "Send application/json, or what the API reference names for this address, and say so in Content-Type.",
  },
  "misdirected-request": {
    status: 421,
    title: "The request names another host",
    remedy: "Open the service under the address it printed when it started.",
  },
  unprocessable: {
    status: 422,
    title: "Each part is well formed, but together they make no sense",
    remedy: "Correct each place named under errors.",
  },
  "idempotency-key-reused": {
    status: 422,
    title: "The Idempotency-Key came before with something else",
    remedy: "Make a new key for each thing done, and send it again only with the same request.",
  },
  /** RFC 6585 section 4. */
  "too-many-attempts": {
    status: 429,
    title: "There were too many wrong passwords",
    remedy: "Wait for as long as Retry-After says, in seconds, then try again.",
  },
  /** RFC 6585 section 3. */
  "precondition-required": {
    status: 428,
    title: "The change does not say which version it is of",
    remedy: "Read the record and send its ETag as If-Match.",
  },
  internal: {
    status: 500,
    title: "The service made a mistake",
    remedy:
      "Nothing was saved. Try again; if it happens again, tell whoever keeps the service the time it did.",
  },
  "database-unavailable": {
    status: 503,
    title: "The database does not answer",
    remedy: "Nothing was saved. Try again in a moment; if it lasts, check that the database runs.",
  },
} as const satisfies Record<string, RefusalKind>;

export type RefusalCode = keyof typeof REFUSALS;

export const REFUSAL_CODES = Object.keys(REFUSALS) as readonly RefusalCode[];

/** One place in the request that is wrong. */
export const fault = z
  .object({
    pointer: z.string().meta({
      description:
        "JSON pointer (RFC 6901) into the request, seen as one document with the members body, query, path and headers.",
      examples: ["/body/trains/3/code"],
    }),
    detail: z.string().meta({ description: "What is wrong there, and what it must be." }),
    row: z.int().min(1).optional().meta({ description: "Line of a CSV file, the heading being line 1." }),
    column: z.string().optional().meta({ description: "Heading of the column of a CSV file." }),
  })
  .meta({ id: "Fault" });

export type Fault = z.output<typeof fault>;

/** A refusal as it is sent: problem details, RFC 9457. */
export const problem = z
  .object({
    type: z
      .string()
      .meta({ description: "Address of a page about this kind.", examples: ["/problems/not-found"] }),
    title: z.string().meta({ description: "The kind, in one sentence." }),
    status: z.int().meta({ description: "HTTP status." }),
    detail: z.string().meta({ description: "This case, and what to do about it." }),
    code: z
      .enum(REFUSAL_CODES as [RefusalCode, ...RefusalCode[]])
      .meta({ description: "Stable name of the kind." }),
    errors: z
      .array(fault)
      .optional()
      .meta({ description: "Every place that is wrong, as far as they can be told." }),
  })
  .meta({ id: "Problem" });

export type Problem = z.output<typeof problem>;
