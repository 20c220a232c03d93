/** What the service says when it refuses, as RFC 9457 has it. */
interface ProblemDocument {
  readonly title?: string;
  readonly detail?: string;
  readonly errors?: readonly { readonly pointer?: string; readonly detail: string }[];
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

  constructor(status: number, happened: string, detail: string, remedies: readonly string[]) {
    super(happened);
    this.status = status;
    this.happened = happened;
    this.detail = detail;
    this.remedies = remedies;
  }
}

export function noAnswer(): Problem {
  return new Problem(0, "The service does not answer.", "", [
    "See whether it is running and whether this device is on its network, then try again.",
  ]);
}

/** The problem a refused answer tells of. An answer that is no problem document is named by its status alone. */
export async function toProblem(response: Response): Promise<Problem> {
  const body = await readDocument(response);
  const happened = body.title ?? body.detail ?? `The service answered with status ${response.status}.`;
  const detail = body.title === undefined ? "" : (body.detail ?? "");
  const remedies = (body.errors ?? []).map(({ pointer, detail }) =>
    pointer ? `${pointer}: ${detail}` : detail,
  );
  return new Problem(response.status, happened, detail, remedies);
}

async function readDocument(response: Response): Promise<ProblemDocument> {
  try {
    const body: unknown = await response.json();
    return typeof body === "object" && body !== null ? body : {};
  } catch {
    return {};
  }
}
