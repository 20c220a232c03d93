import type { ComponentChildren } from "preact";
import { NotFound } from "../shell/not-found-page.tsx";
import { ProblemView } from "../shell/problem-view.tsx";
import { Waiting } from "../shell/waiting.tsx";
import type { Current } from "./use-current.ts";

interface FirstAnswerProps<T> {
  readonly current: Current<T>;
  readonly what: string;
  readonly children: (value: T) => ComponentChildren;
}

/** What the service said last; before its first answer, where the question stands. */
export function FirstAnswer<T>({ current, what, children }: FirstAnswerProps<T>) {
  const { value, problem, refresh } = current;
  if (value !== null) return <>{children(value)}</>;
  if (problem === null) return <Waiting what={what} stop={() => history.back()} />;
  if (problem.status === 404) return <NotFound happened={problem.detail || problem.happened} />;
  return <ProblemView problem={problem} again={refresh} />;
}
