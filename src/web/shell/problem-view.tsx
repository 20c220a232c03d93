import type { Problem } from "../api/problem.ts";

/** What happened, what is safe, what to do. */
export function ProblemView({ problem, again }: { readonly problem: Problem; readonly again: () => void }) {
  return (
    <section class="problem" role="alert">
      <h2>{problem.happened}</h2>
      {problem.detail && <p>{problem.detail}</p>}
      {problem.remedies.length > 0 && (
        <ul>
          {problem.remedies.map((remedy) => (
            <li key={remedy}>{remedy}</li>
          ))}
        </ul>
      )}
      <p>Looking changes nothing, so it is safe to try again.</p>
      <button type="button" onClick={again}>
        Try again
      </button>
    </section>
  );
}
