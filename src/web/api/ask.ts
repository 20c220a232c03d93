import { signal } from "@preact/signals";
import { noAnswer, toProblem } from "./problem.ts";

/** Raised when the service no longer knows who asks, as after a long pause; lowered by signing in again. */
export const signInEnded = signal(false);

type ChangingMethod = "POST" | "PUT" | "DELETE";

/** What goes with a change. */
export interface ChangeOptions {
  /** Sent as JSON; left out, no body is sent. */
  readonly body?: unknown;
  /** Sent as it is, under its own type. */
  readonly bytes?: Blob;
  /** ETag of the record as it was read, where others may have changed it since. */
  readonly etag?: string | null;
  /** The same key for the same press sent again: the service does it once. */
  readonly key?: string;
  readonly signal?: AbortSignal;
}

/** An answer's body, `undefined` where it has none, and the ETag to send with a change of it. */
export interface Answer<T> {
  readonly value: T;
  readonly etag: string | null;
}

/** Reads what stands at `path`; throws a Problem, or the reason of an abort. */
export async function read<T>(path: string, signal: AbortSignal): Promise<T> {
  return (await readTagged<T>(path, signal)).value;
}

/** The same with its ETag, for whoever means to change it. */
export function readTagged<T>(path: string, signal: AbortSignal): Promise<Answer<T>> {
  return answerOf<T>(path, { method: "GET", signal, headers: { accept: "application/json" } });
}

/** Asks for a change; throws a Problem, or the reason of an abort. After no answer it may have been made or not. */
export function change<T = undefined>(
  method: ChangingMethod,
  path: string,
  { body, bytes, etag, key, signal }: ChangeOptions = {},
): Promise<Answer<T>> {
  const headers: Record<string, string> = { accept: "application/json" };
  if (body !== undefined) headers["content-type"] = "application/json";
  if (etag) headers["if-match"] = etag;
  if (key !== undefined) headers["idempotency-key"] = key;
  const request: RequestInit = { method, headers };
  if (body !== undefined) request.body = JSON.stringify(body);
  if (bytes !== undefined) request.body = bytes;
  if (signal) request.signal = signal;
  return answerOf<T>(path, request);
}

async function answerOf<T>(path: string, request: RequestInit): Promise<Answer<T>> {
  const response = await sent(path, request);
  if (!response.ok) {
    const problem = await toProblem(response);
    if (problem.code === "not-signed-in") signInEnded.value = true;
    throw problem;
  }
  const text = await received(response, request);
  return { value: (text === "" ? undefined : JSON.parse(text)) as T, etag: response.headers.get("etag") };
}

async function sent(path: string, request: RequestInit): Promise<Response> {
  try {
    return await fetch(path, { credentials: "same-origin", ...request });
  } catch (error) {
    throw request.signal?.aborted ? error : noAnswer();
  }
}

/** An answer that breaks off in the middle is none. */
async function received(response: Response, request: RequestInit): Promise<string> {
  try {
    return await response.text();
  } catch (error) {
    throw request.signal?.aborted ? error : noAnswer();
  }
}
