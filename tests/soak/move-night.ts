import { setTimeout as sleep } from "node:timers/promises";
import type { Entry } from "./journal.ts";
import { CLUB, NIGHT } from "./made-club.ts";
import type { Stage } from "./stage.ts";

export const SESSION_URL = `/api/clubs/${CLUB.code}/sessions/${NIGHT.session}`;

const MOST_SENDINGS = 100;

/** The secretary moves the night on; reads again and tries again while others change it. */
export async function moveNight({ servers, secretary }: Stage, to: "open" | "locked"): Promise<Entry> {
  const sentMs = Date.now();
  for (let sendings = 1; ; sendings++) {
    const booking = `${servers[0]}${SESSION_URL}/booking`;
    const etag = (await fetch(booking, { headers: secretary })).headers.get("etag") ?? "";
    const { status, ...response } = await send(`${booking}/moves`, etag, secretary, to);
    if (status < 300)
      return {
        act: "lock",
        member: "",
        job: "",
        key: to,
        sentMs,
        answeredMs: Date.now(),
        sendings,
        status: 200,
      };
    if (sendings === MOST_SENDINGS) throw new Error(`the night can't be ${to}: ${status} ${response.said}`);
    await sleep(100);
  }
}

async function send(url: string, etag: string, headers: Readonly<Record<string, string>>, to: string) {
  const response = await fetch(url, {
    method: "POST",
    headers: { ...headers, "content-type": "application/json", "if-match": etag },
    body: JSON.stringify({ to }),
  });
  return { status: response.status, said: await response.text() };
}
