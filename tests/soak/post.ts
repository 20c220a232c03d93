import { setTimeout as sleep } from "node:timers/promises";
import type { Random } from "../bench/random.ts";

export interface Answer {
  readonly sentMs: number;
  readonly answeredMs: number;
  readonly sendings: number;
  /** 0: nobody answered to the last. */
  readonly status: number;
  readonly body: unknown;
}

export interface Request {
  readonly method: "POST" | "PUT" | "DELETE" | "GET";
  readonly path: string;
  readonly body?: unknown | undefined;
  readonly key: string;
  readonly headers: Readonly<Record<string, string>>;
}

const PATIENCE_MS = 120_000;
const ANSWER_LIMIT_MS = 30_000;

/**
 * Sends a request until somebody answers it, to one server and then the other, as a phone does that has lost its network:
 * always with the same key. 503 is no answer, as the service says itself: it has no database just now.
 */
export async function post(
  servers: readonly string[],
  first: number,
  request: Request,
  random: Random,
): Promise<Answer> {
  const sentMs = Date.now();
  for (let sendings = 1; ; sendings++) {
    const server = servers[(first + sendings - 1) % servers.length] ?? "";
    const answer = await sendOnce(server, request);
    const answeredMs = Date.now();
    if (answer) return { sentMs, answeredMs, sendings, ...answer };
    if (answeredMs - sentMs > PATIENCE_MS) return { sentMs, answeredMs, sendings, status: 0, body: null };
    await sleep(random.whole(20, 400));
  }
}

async function sendOnce(server: string, { method, path, body, key, headers }: Request) {
  try {
    const response = await fetch(`${server}${path}`, {
      method,
      headers: {
        ...headers,
        ...(body === undefined ? {} : { "content-type": "application/json" }),
        "idempotency-key": key,
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      signal: AbortSignal.timeout(ANSWER_LIMIT_MS),
    });
    const text = await response.text();
    if (response.status === 503) return undefined;
    return { status: response.status, body: text === "" ? null : (JSON.parse(text) as unknown) };
  } catch {
    return undefined; // refused, reset, or cut off in mid-answer
  }
}
