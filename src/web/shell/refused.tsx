import type { Problem } from "../api/problem.ts";

interface RefusedProps {
  readonly problem: Problem | null;
  /** Pointers of the fields that show their own faults. */
  readonly besides?: readonly string[];
}

/** Why the service did not do it, beside the button that asked. What was filled in stays. */
export function Refused({ problem, besides = [] }: RefusedProps) {
  if (!problem) return null;
  const isShown = (pointer = "") => besides.some((p) => pointer === p || pointer.startsWith(`${p}/`));
  const elsewhere = problem.faults.filter(({ pointer }) => !isShown(pointer));
  // each says what must be done; what a program would be told besides helps nobody here
  const isTold = problem.faults.length > 0;
  return (
    <div class="refused" role="alert">
      <p>
        <strong>
          {isTold && elsewhere.length === 0 ? "Please correct what is marked." : problem.happened}
        </strong>
      </p>
      {problem.detail && !isTold && <p>{problem.detail}</p>}
      {problem.status === 0 && problem.remedies.map((remedy) => <p key={remedy}>{remedy}</p>)}
      {elsewhere.length > 0 && (
        <ul>
          {elsewhere.map(({ pointer, detail }) => (
            <li key={`${pointer} ${detail}`}>{detail}</li>
          ))}
        </ul>
      )}
    </div>
  );
}
