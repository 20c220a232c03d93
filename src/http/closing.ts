import type { FastifyInstance } from "fastify";

/**
 * Lets the app close as soon as the last answer is out. A connection that was at work when closing began stays open
 * after its answer for as long as idle ones may, and closing waits for it: so it is told to close, and closed.
 */
export function installClosing(app: FastifyInstance): void {
  let closing = false;
  app.addHook("preClose", async () => {
    closing = true;
  });
  app.addHook("onSend", async (_, reply) => {
    if (closing) reply.header("connection", "close");
  });
  app.addHook("onResponse", async () => {
    // an answer that had begun before said nothing of closing; its connection counts as idle only after this hook
    if (closing) setImmediate(() => app.server.closeIdleConnections());
  });
}
