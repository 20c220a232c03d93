import { useCallback, useRef, useState } from "preact/hooks";
import { asProblem, type Problem } from "../api/problem.ts";

/** A change asked of the service. `key` is sent as Idempotency-Key. */
export type Deed = (key: string) => Promise<unknown>;

/** One change at a time, with where it stands. */
export interface Doing {
  /** What is under way, as it was called; null when nothing is. */
  readonly busy: string | null;
  /** Why the last one was refused; null once another began. */
  readonly refused: { readonly name: string; readonly problem: Problem } | null;
  /** Starts a deed; a second press meanwhile does nothing. Answers whether it was done. */
  readonly run: (name: string, deed: Deed) => Promise<boolean>;
  readonly forget: () => void;
}

/** 128 random bits. `crypto.randomUUID` is not there on a page served without TLS, as in a club room. */
export function newKey(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) =>
    byte.toString(16).padStart(2, "0"),
  ).join("");
}

/**
 * Every press has a key of its own, except that one whose answer never came keeps it: pressed again, the service
 * knows it for the same and does it once.
 */
export function useDeed(): Doing {
  const [busy, setBusy] = useState<string | null>(null);
  const [refused, setRefused] = useState<Doing["refused"]>(null);
  const running = useRef(false);
  const unanswered = useRef(new Map<string, string>());
  const run = useCallback(async (name: string, deed: Deed) => {
    if (running.current) return false;
    running.current = true;
    setBusy(name);
    setRefused(null);
    const key = unanswered.current.get(name) ?? newKey();
    try {
      await deed(key);
      unanswered.current.delete(name);
      return true;
    } catch (error) {
      const problem = asProblem(error);
      if (problem.status === 0 || problem.status >= 500) unanswered.current.set(name, key);
      else unanswered.current.delete(name);
      setRefused({ name, problem });
      return false;
    } finally {
      running.current = false;
      setBusy(null);
    }
  }, []);
  const forget = useCallback(() => setRefused(null), []);
  return { busy, refused, run, forget };
}
