import { signal } from "@preact/signals";
import type { Me } from "../../../shared/accounts.ts";
import { read, signInEnded } from "./ask.ts";
import { asProblem, Problem } from "./problem.ts";

/** Whether it is known who looks at the pages. */
export type MeState =
  | { readonly status: "unknown" }
  | { readonly status: "signed-out" }
  | { readonly status: "failed"; readonly problem: Problem }
  | { readonly status: "known"; readonly me: Me };

const UNKNOWN: MeState = { status: "unknown" };

const state = signal<MeState>(UNKNOWN);
let asking: Promise<void> | null = null;

/** What is known, without asking. Read in a component, it renders anew when this changes. */
export const meState = (): MeState => state.value;

/** Asks who is signed in; while a question is under way, or once it was answered, it asks no second. */
export function askMe(): Promise<void> {
  asking ??= ask();
  return asking;
}

/** Asks again, after a sign-in, or a change of one's own name or roles. The old answer holds meanwhile. */
export function askMeAgain(): Promise<void> {
  asking = ask();
  return asking;
}

/** Forgets who it was: after signing out, and before someone else signs in. */
export function forgetMe(): void {
  asking = null;
  signInEnded.value = false;
  state.value = UNKNOWN;
}

async function ask(): Promise<void> {
  const before = state.value;
  try {
    const me = await read<Me>("/api/me", new AbortController().signal);
    signInEnded.value = false;
    state.value = { status: "known", me };
  } catch (error) {
    asking = null;
    // a service that keeps no accounts admits whoever reaches it
    if (error instanceof Problem && error.status === 404) {
      state.value = { status: "known", me: { person: { name: "", email: "" }, clubs: [], expires: "" } };
      return;
    }
    const isSignedOut = error instanceof Problem && error.status === 401;
    // a page in use stays; the band above it says what to do
    if (isSignedOut && before.status === "known") return;
    if (isSignedOut) signInEnded.value = false;
    state.value = isSignedOut ? { status: "signed-out" } : { status: "failed", problem: asProblem(error) };
  }
}
