import { createServer, type IncomingHttpHeaders, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { vi } from "vitest";

/** A request as it arrived. */
export interface Arrived {
  readonly method: string;
  readonly path: string;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

/** What it is answered; null breaks the connection. */
export type Reply = {
  readonly status: number;
  readonly headers?: Record<string, string>;
  readonly body?: string;
} | null;

/** A real HTTP server in place of the service; addresses that begin with a slash lead to it until it is closed. */
export async function answering(reply: (request: Arrived) => Reply) {
  const arrived: Arrived[] = [];
  const server: Server = createServer((request, response) => {
    const chunks: Buffer[] = [];
    request.on("data", (chunk: Buffer) => chunks.push(chunk));
    request.on("end", () => {
      const { method = "", url: path = "", headers } = request;
      const one = { method, path, headers, body: Buffer.concat(chunks).toString() };
      arrived.push(one);
      const answer = reply(one);
      if (answer === null) return request.socket.destroy();
      response.writeHead(answer.status, answer.headers).end(answer.body);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  const real = fetch;
  vi.stubGlobal("fetch", (path: string, request?: RequestInit) =>
    real(`http://127.0.0.1:${port}${path}`, request),
  );
  return {
    arrived,
    close: () => {
      vi.unstubAllGlobals();
      server.closeAllConnections();
      return new Promise((resolve) => server.close(resolve));
    },
  };
}
