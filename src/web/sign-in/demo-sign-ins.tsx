import type { DemoSignIn } from "../../../shared/accounts.ts";
import { listDemoSignIns } from "../api/accounts.ts";
import { useLoad } from "../api/use-load.ts";
import { Refused } from "../shell/refused.tsx";
import { roleList } from "../shell/role-words.ts";
import { useSubmit } from "../shell/use-submit.ts";

interface DemoSignInsProps {
  readonly enter: (as: DemoSignIn) => Promise<void>;
}

/** A button for each sign-in of the demo club; nothing where there is no demo. */
export function DemoSignIns({ enter }: DemoSignInsProps) {
  const load = useLoad("demo-sign-ins", listDemoSignIns);
  const { isBusy, problem, run } = useSubmit(enter);
  const all = load.status === "ready" ? load.value : [];
  if (all.length === 0) return null;
  return (
    <section class="demo-sign-ins" aria-labelledby="demo-heading">
      <h2 id="demo-heading">Look around the demo club</h2>
      <p>Its people are invented. Sign in as any of them:</p>
      <ul>
        {all.map((one) => (
          <li key={one.email}>
            <button type="button" disabled={isBusy} onClick={() => void run(one)}>
              <strong>{roleList(one.roles)}</strong>
              <span class="quiet">{one.name}</span>
            </button>
          </li>
        ))}
      </ul>
      <Refused problem={problem} />
    </section>
  );
}
