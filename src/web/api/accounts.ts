import type { DemoSignIn, OneTimeLink, RedeemBody } from "../../../shared/accounts.ts";
import { change, read } from "./ask.ts";

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

const linkPath = (token: string) => `/api/links/${encodeURIComponent(token)}`;

export const readLink = (token: string, signal: AbortSignal) => read<OneTimeLink>(linkPath(token), signal);

export const redeemLink = (token: string, body: RedeemBody) => change("POST", linkPath(token), { body });
