import { useCallback, useRef, useState } from "preact/hooks";
import { asProblem, type Problem } from "../api/problem.ts";

/** Where a form's one deed stands. */
export interface Submit<A> {
  readonly isBusy: boolean;
  /** Why it was refused; null before, while it is under way and once it was done. */
  readonly problem: Problem | null;
  /** What is wrong with a field of the body, `/body/email`. */
  readonly faultAt: (pointer: string) => string | undefined;
  /** Does the deed; a second press meanwhile does nothing. Answers whether it was done. */
  readonly run: (what: A) => Promise<boolean>;
  /** The same for a form that says all by itself. */
  readonly submit: (event: Event) => void;
  readonly forget: () => void;
}

/** A deed for a form's submit, or for buttons that each say `what`. */
export function useSubmit<A = void>(deed: (what: A) => Promise<unknown>): Submit<A> {
  const [isBusy, setBusy] = useState(false);
  const [problem, setProblem] = useState<Problem | null>(null);
  const latest = useRef(deed);
  latest.current = deed;
  const isRunning = useRef(false);
  const run = useCallback(async (what: A) => {
    if (isRunning.current) return false;
    isRunning.current = true;
    setBusy(true);
    setProblem(null);
    try {
      await latest.current(what);
      return true;
    } catch (error) {
      setProblem(asProblem(error));
      return false;
    } finally {
      isRunning.current = false;
      setBusy(false);
    }
  }, []);
  const submit = useCallback(
    (event: Event) => {
      event.preventDefault();
      void run(undefined as A);
    },
    [run],
  );
  const faultAt = (pointer: string) =>
    problem?.faults.find((fault) => fault.pointer === pointer || fault.pointer?.startsWith(`${pointer}/`))
      ?.detail;
  const forget = useCallback(() => setProblem(null), []);
  return { isBusy, problem, faultAt, run, submit, forget };
}
