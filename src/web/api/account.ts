import type { AccessToken, TokenBody } from "../../../shared/accounts.ts";
import { change, read } from "./ask.ts";

const TOKENS = "/api/me/tokens";

export const EXPORT = "/api/me/export";

export const renameMe = (name: string) => change("PUT", "/api/me", { body: { name } });

export const changePassword = (current: string, password: string) =>
  change("POST", "/api/me/password", { body: { current, password } });

export async function listTokens(signal: AbortSignal): Promise<readonly AccessToken[]> {
  return (await read<{ items: readonly AccessToken[] }>(TOKENS, signal)).items;
}

/** Makes a token; the answer alone ever holds the key. */
export async function makeToken(draft: TokenBody): Promise<string> {
  return (await change<{ token: string }>("POST", TOKENS, { body: draft })).value.token;
}

export const revokeToken = (id: string) => change("DELETE", `${TOKENS}/${encodeURIComponent(id)}`);

/** Makes a new address of one's calendar; the one before leads nowhere from then on. */
export async function makeCalendarAddress(): Promise<string> {
  return (await change<{ url: string }>("POST", "/api/me/calendar")).value.url;
}

export const revokeCalendarAddress = () => change("DELETE", "/api/me/calendar");

export const eraseMe = (password: string) => change("POST", "/api/me/erase", { body: { password } });
