import type { MailView } from "../../../shared/mails.ts";
import { read } from "./ask.ts";
import { clubPath, type ListPage } from "./service.ts";

/** A page of what was mailed for the club, latest first. */
export function listMails(
  club: string,
  cursor: string | null,
  signal: AbortSignal,
): Promise<ListPage<MailView>> {
  const query = cursor === null ? "" : `?cursor=${encodeURIComponent(cursor)}`;
  return read(`${clubPath(club)}/mails${query}`, signal);
}
