import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";
import { noAnswer, type Problem } from "../api/problem.ts";
import { ProblemView } from "./problem-view.tsx";

/**
 * A page whose code comes when it is first opened: what a layout owner needs is not brought to every member's phone. The
 * code is kept once it is there.
 */
export function later<P extends object>(load: () => Promise<ComponentType<P>>): ComponentType<P> {
  let known: ComponentType<P> | null = null;
  return function Later(props: P) {
    const [Page, setPage] = useState<ComponentType<P> | null>(() => known);
    const [problem, setProblem] = useState<Problem | null>(null);
    const [turn, setTurn] = useState(0);
    useEffect(() => {
      if (Page !== null) return;
      setProblem(null);
      load().then(
        (page) => {
          known = page;
          setPage(() => page);
        },
        () => setProblem(noAnswer()),
      );
    }, [Page, turn]);
    if (Page !== null) return <Page {...props} />;
    return (
      <main id="main" class="page" tabIndex={-1}>
        {problem ? <ProblemView problem={problem} again={() => setTurn(turn + 1)} /> : null}
      </main>
    );
  };
}
