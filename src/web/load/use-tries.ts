import { useEffect, useState } from "preact/hooks";
import type { TryAnswer, TryStep } from "../../../shared/what-if.ts";
import { asProblem, type Problem } from "../api/problem.ts";
import { type SlotCodes, trySlot } from "./load-service.ts";
import { readTries } from "./try-address.ts";

export interface Tries {
  readonly steps: readonly TryStep[];
  /** What the service said last; null where nothing is tried. It stays on show while it is asked again. */
  readonly answer: TryAnswer | null;
  readonly isAsking: boolean;
  readonly problem: Problem | null;
  readonly add: (step: TryStep) => void;
  readonly remove: (at: number) => void;
  readonly clear: () => void;
  readonly again: () => void;
}

/** What is tried on a slot, from the address on, and what the service says of it. */
export function useTries(codes: SlotCodes): Tries {
  const [steps, setSteps] = useState<readonly TryStep[]>(() => readTries(location.search));
  const [answer, setAnswer] = useState<TryAnswer | null>(null);
  const [isAsking, setAsking] = useState(false);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [turn, setTurn] = useState(0);

  // the codes stand in the page's key
  useEffect(() => {
    setProblem(null);
    if (steps.length === 0) {
      setAnswer(null);
      setAsking(false);
      return;
    }
    const controller = new AbortController();
    setAsking(true);
    trySlot(codes, steps, controller.signal).then(
      (value) => {
        setAnswer(value);
        setAsking(false);
      },
      (error) => {
        if (controller.signal.aborted) return;
        setProblem(asProblem(error));
        setAsking(false);
      },
    );
    return () => controller.abort();
  }, [steps, turn]);

  return {
    steps,
    answer,
    isAsking,
    problem,
    add: (step) => setSteps((now) => [...now, step]),
    remove: (at) => setSteps((now) => now.toSpliced(at, 1)),
    clear: () => setSteps([]),
    again: () => setTurn((n) => n + 1),
  };
}
