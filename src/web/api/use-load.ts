import { useCallback, useEffect, useState } from "preact/hooks";
import { asProblem, type Problem } from "./problem.ts";

/** Where a question to the service stands. `again` asks once more, `stop` gives up waiting. */
export type Load<T> =
  | { readonly status: "loading"; readonly stop: () => void }
  | { readonly status: "stopped"; readonly again: () => void }
  | { readonly status: "failed"; readonly problem: Problem; readonly again: () => void }
  | { readonly status: "ready"; readonly value: T; readonly again: () => void };

type Outcome<T> =
  | { readonly status: "loading" | "stopped" }
  | { readonly status: "failed"; readonly problem: Problem }
  | { readonly status: "ready"; readonly value: T };

/** Asks when it first renders and whenever `key` changes; what is still waited for then is given up. */
export function useLoad<T>(key: string, question: (signal: AbortSignal) => Promise<T>): Load<T> {
  const [outcome, setOutcome] = useState<Outcome<T>>({ status: "loading" });
  const [round, setRound] = useState(0);
  const [abort, setAbort] = useState<AbortController | null>(null);

  // the key stands for the question, the round for asking again
  useEffect(() => {
    const controller = new AbortController();
    setAbort(controller);
    setOutcome({ status: "loading" });
    const settle = (next: Outcome<T>) => {
      if (!controller.signal.aborted) setOutcome(next);
    };
    question(controller.signal).then(
      (value) => settle({ status: "ready", value }),
      (error: unknown) => {
        if (!controller.signal.aborted) settle({ status: "failed", problem: asProblem(error) });
      },
    );
    return () => controller.abort();
  }, [key, round]);

  const again = useCallback(() => setRound((n) => n + 1), []);
  const stop = useCallback(() => {
    abort?.abort();
    setOutcome({ status: "stopped" });
  }, [abort]);
  if (outcome.status === "loading") return { status: "loading", stop };
  return { ...outcome, again } as Load<T>;
}
