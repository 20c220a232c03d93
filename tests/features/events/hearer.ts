import { get, type IncomingMessage } from "node:http";
import type { ClubEvent } from "../../../shared/trail.ts";

export type Hearer = ReturnType<typeof listenTo>;

/** Reads a stream of server-sent events as a browser does: HTML standard, section 9.2.6. */
export function listenTo(address: string, headers: Readonly<Record<string, string>> = {}) {
  const events: ClubEvent[] = [];
  let lastId = headers["last-event-id"];
  let comments = 0;
  let text = "";
  let answered = (_: IncomingMessage) => {};
  let failed = (_: unknown) => {};
  const opened = new Promise<IncomingMessage>((resolve, reject) => {
    [answered, failed] = [resolve, reject];
  });
  const ended = new Promise<void>((resolve) => {
    request().on("close", resolve);
  });

  function request() {
    return get(address, { headers, agent: false }, (response) => {
      response
        .setEncoding("utf8")
        .on("data", take)
        .on("error", () => {});
      answered(response);
    }).on("error", failed);
  }

  function take(chunk: string): void {
    text += chunk;
    for (let end = text.indexOf("\n\n"); end >= 0; end = text.indexOf("\n\n")) {
      dispatch(text.slice(0, end).split("\n"));
      text = text.slice(end + 2);
    }
  }

  function dispatch(lines: readonly string[]): void {
    for (const line of lines) {
      if (line.startsWith(":")) comments++;
      if (line.startsWith("id: ")) lastId = line.slice(4);
      if (line.startsWith("data: ")) events.push(JSON.parse(line.slice(6)) as ClubEvent);
    }
  }

  opened.catch(() => {});
  return {
    events,
    opened,
    /** Resolves when the line is down, whoever ended it. */
    ended,
    codes: () => events.map(({ code }) => code),
    /** Of the last event, also one that came without data. */
    lastId: () => lastId,
    comments: () => comments,
    hangUp: async () => {
      (await opened).destroy();
      await ended;
    },
  };
}
