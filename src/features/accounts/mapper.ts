import type { AccessToken, TokenScope } from "../../../shared/accounts.ts";
import type * as rows from "../../database/generated/client.ts";

type TokenRow = rows.AccessToken & { readonly club: { readonly code: string } | null };

/** A token as its owner sees it: never the token itself. */
export const toToken = (row: TokenRow): AccessToken => ({
  id: row.id,
  name: row.name,
  scope: row.scope as TokenScope,
  club: row.club?.code ?? null,
  createdAt: row.createdAt.toISOString(),
  expiresAt: row.expiresAt.toISOString(),
  lastUsedAt: row.lastUsedAt?.toISOString() ?? null,
});
