/** One place in what was sent that is wrong; `pointer` as RFC 6901 has it, `/body/email`. */
export interface PlacedFault {
  readonly pointer?: string;
  readonly detail: string;
}

/** What the service says when it refuses, as RFC 9457 has it. */
interface ProblemDocument {
  readonly title?: string;
  readonly detail?: string;
  readonly code?: string;
  readonly errors?: readonly PlacedFault[];
}

/** What a refusal says for programs beside its words. */
interface ProblemExtras {
  readonly code?: string | undefined;
  readonly faults?: readonly PlacedFault[];
}

/** Something that went wrong between this page and the service, in words for whoever looks at the page. */
export class Problem extends Error {
  /** HTTP status; 0 where no answer came. */
  readonly status: number;
  /** One short sentence. */
  readonly happened: string;
  /** The same at length, where there is more to say; else empty. */
  readonly detail: string;
  /** What to do, one way a line. */
  readonly remedies: readonly string[];
  /** The refusal's name in the service's catalogue; null for everything that is none of them. */
  readonly code: string | null;
  /** The same places as the remedies name, for a form that says it beside the field. */
  readonly faults: readonly PlacedFault[];

  constructor(
    status: number,
    happened: string,
    detail: string,
    remedies: readonly string[],
    { code, faults = [] }: ProblemExtras = {},
  ) {
    super(happened);
    this.status = status;
    this.happened = happened;
    this.detail = detail;
    this.remedies = remedies;
    this.code = code ?? null;
    this.faults = faults;
  }
}

export function noAnswer(): Problem {
  return new Problem(0, "The service does not answer.", "", [
    "See whether it is running and whether this device is on its network, then try again.",
  ]);
}

/** Anything but a Problem that a question ends with is a fault of this page; it is shown, not swallowed. */
export function asProblem(error: unknown): Problem {
  if (error instanceof Problem) return error;
  console.error(error);
  return error instanceof TypeError
    ? noAnswer()
    : new Problem(0, "This page made a mistake.", String(error), []);
}

/** The problem a refused answer tells of. An answer that is no problem document is named by its status alone. */
export async function toProblem(response: Response): Promise<Problem> {
  const body = await readDocument(response);
  const happened = body.title ?? body.detail ?? `The service answered with status ${response.status}.`;
  const detail = body.title === undefined ? "" : (body.detail ?? "");
  const faults = body.errors ?? [];
  const remedies = faults.map(({ pointer, detail }) => (pointer ? `${pointer}: ${detail}` : detail));
  return new Problem(response.status, happened, detail, remedies, { code: body.code, faults });
}

async function readDocument(response: Response): Promise<ProblemDocument> {
  try {
    const body: unknown = await response.json();
    return typeof body === "object" && body !== null ? body : {};
  } catch {
    return {};
  }
}
