import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import { asProblem, type Problem } from "../api/problem.ts";

interface Held<T> {
  /** Null until the first answer. */
  readonly value: T | null;
  /** When this device got it, ms since 1970. */
  readonly receivedAt: number;
  /** Why the last question failed; null once one was answered. */
  readonly problem: Problem | null;
}

/** What the service said last, kept on show while it is asked again. */
export interface Current<T> extends Held<T> {
  /** What was said last, for a button that was drawn before it came. */
  readonly latest: () => T | null;
  /** Asks again. Called while a question is under way, it asks once more after it. */
  readonly refresh: () => void;
}

const NOTHING = { value: null, receivedAt: 0, problem: null } as const;

/**
 * Asks when it first renders, when `key` changes and when told that something changed. Unlike a load it never goes
 * back to waiting: a board that people look at does not go blank because somebody else claimed a train. While the key
 * is null it asks nothing.
 */
export function useCurrent<T>(key: string | null, question: (signal: AbortSignal) => Promise<T>): Current<T> {
  const [held, setHeld] = useState<Held<T>>(NOTHING);
  const last = useRef<Held<T>>(NOTHING);
  const ask = useRef(question);
  ask.current = question;
  const asking = useRef<Asking | null>(null);

  // the key stands for the question
  useEffect(() => {
    const hold = (next: Held<T>) => {
      last.current = next;
      setHeld(next);
    };
    hold(NOTHING);
    if (key === null) return;
    const turn = createAsking(
      (signal) => ask.current(signal),
      (value) => hold({ value, receivedAt: Date.now(), problem: null }),
      (problem) => hold({ ...last.current, problem }),
    );
    asking.current = turn;
    turn.refresh();
    return () => {
      asking.current = null;
      turn.stop();
    };
  }, [key]);

  const refresh = useCallback(() => asking.current?.refresh(), []);
  const latest = useCallback(() => last.current.value, []);
  return { ...held, latest, refresh };
}

interface Asking {
  refresh(): void;
  stop(): void;
}

/** One question at a time; however often it is asked meanwhile, it is asked once more. */
function createAsking<T>(
  question: (signal: AbortSignal) => Promise<T>,
  onValue: (value: T) => void,
  onProblem: (problem: Problem) => void,
): Asking {
  const controller = new AbortController();
  const { signal } = controller;
  let isUnderWay = false;
  let isDue = false;
  async function refresh(): Promise<void> {
    isDue = true;
    if (isUnderWay) return;
    isUnderWay = true;
    while (isDue && !signal.aborted) {
      isDue = false;
      try {
        const value = await question(signal);
        // overtaken by a change, it is not shown: the next answer holds both
        if (!isDue && !signal.aborted) onValue(value);
      } catch (error) {
        if (!isDue && !signal.aborted) onProblem(asProblem(error));
      }
    }
    isUnderWay = false;
  }
  return { refresh: () => void refresh(), stop: () => controller.abort() };
}
