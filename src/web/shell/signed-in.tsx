import type { ComponentChildren } from "preact";
import { useEffect } from "preact/hooks";
import { useLocation } from "preact-iso";
import { signInAddress } from "../addresses.ts";
import { askMe, askMeAgain, meState } from "../api/me.ts";
import { ProblemView } from "./problem-view.tsx";
import { Waiting } from "./waiting.tsx";

/** Shows what it holds once it is known who looks; whoever is not signed in goes to do so, and comes back. */
export function SignedIn({ children }: { readonly children: ComponentChildren }) {
  const { route } = useLocation();
  const state = meState();
  useEffect(() => void askMe(), []);
  useEffect(() => {
    const { pathname, search, hash } = location;
    if (state.status === "signed-out") route(signInAddress(`${pathname}${search}${hash}`), true);
  }, [state.status, route]);
  switch (state.status) {
    case "known":
      return <>{children}</>;
    case "failed":
      return (
        <main id="main" class="page" tabIndex={-1}>
          <h1>It is not known who you are</h1>
          <ProblemView problem={state.problem} again={() => void askMeAgain()} />
        </main>
      );
    default:
      return (
        <main id="main" class="page" tabIndex={-1}>
          <Waiting what="Looking who is signed in" stop={() => history.back()} />
        </main>
      );
  }
}
