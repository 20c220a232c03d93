import type { Problem } from "../api/problem.ts";

/** What happened, what is safe, what to do. */
export function ProblemView({ problem, again }: { readonly problem: Problem; readonly again: () => void }) {
  const remedies =
    problem.remedies.length > 0 ? problem.remedies : ["Try again, or go back to where you came from."];
  return (
    <section class="problem" role="alert">
      <h2>{problem.happened}</h2>
      <p>Nothing was changed: looking at a plan only reads the records.</p>
      <ul>
        {remedies.map((remedy) => (
          <li key={remedy}>{remedy}</li>
        ))}
      </ul>
      <button type="button" onClick={again}>
        Try again
      </button>
    </section>
  );
}
