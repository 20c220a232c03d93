import { change, read } from "./ask.ts";

/** A sign-in that anyone may try: the demo club has one for each role. */
export interface DemoSignIn {
  readonly email: string;
  readonly password: string;
  readonly name: string;
  readonly roles: readonly string[];
}

export const signIn = (email: string, password: string) =>
  change("POST", "/api/sign-in", { body: { email, password } });

export const signOut = () => change("POST", "/api/sign-out");

/** The demo's sign-ins; none where the service holds real clubs. */
export async function listDemoSignIns(signal: AbortSignal): Promise<readonly DemoSignIn[]> {
  const response = await fetch("/api/demo-sign-ins", { signal, headers: { accept: "application/json" } });
  if (!response.ok) return [];
  return ((await response.json()) as { items: readonly DemoSignIn[] }).items;
}

/** Always goes well: whether the address has an account is nobody's business. */
export const requestReset = (email: string) => change("POST", "/api/reset-requests", { body: { email } });

/** What a one-time link is good for. */
export interface OneTimeLink {
  readonly purpose: "invitation" | "reset" | "first-secretary";
  readonly expiresAt: string;
  /** Of whom it was sent to; null where it may be anyone's. */
  readonly email: string | null;
  /** The club it leads into. */
  readonly club: { readonly code: string; readonly name: string } | null;
  /** As the club's list has them. */
  readonly name: string | null;
  /** Whether the address has an account already. */
  readonly hasAccount: boolean;
}

const linkPath = (token: string) => `/api/links/${encodeURIComponent(token)}`;

export const readLink = (token: string, signal: AbortSignal) => read<OneTimeLink>(linkPath(token), signal);

export const redeemLink = (token: string, body: object) => change("POST", linkPath(token), { body });
