import type { ComponentChildren } from "preact";
import type { Load } from "../api/use-load.ts";
import { NotFound } from "./not-found-page.tsx";
import { ProblemView } from "./problem-view.tsx";
import { Waiting } from "./waiting.tsx";

interface LoadedProps<T> {
  readonly load: Load<T>;
  /** What is being waited for, `Checking the night`. */
  readonly what: string;
  readonly children: (value: T, again: () => void) => ComponentChildren;
}

/** A value from the service once it is there, and until then where the question stands. */
export function Loaded<T>({ load, what, children }: LoadedProps<T>) {
  switch (load.status) {
    case "ready":
      return <>{children(load.value, load.again)}</>;
    case "loading":
      return <Waiting what={what} stop={load.stop} />;
    case "failed":
      if (load.problem.status === 404)
        return <NotFound happened={load.problem.detail || load.problem.happened} />;
      return <ProblemView problem={load.problem} again={load.again} />;
    case "stopped":
      return (
        <section class="problem" role="status">
          <h2>Stopped waiting.</h2>
          <p>Nothing was changed.</p>
          <button type="button" onClick={load.again}>
            Try again
          </button>
        </section>
      );
  }
}
