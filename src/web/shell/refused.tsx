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
  return (
    <div class="refused" role="alert">
      <p>
        <strong>{problem.happened}</strong>
      </p>
      {problem.detail && <p>{problem.detail}</p>}
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
