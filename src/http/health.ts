import { z } from "zod";
import type { HttpApp } from "./bare-app.ts";
import { refusalResponses } from "./problem-details.ts";

const ok = z.object({ status: z.literal("ok") });

/** `/healthz`: the process answers. `/readyz`: its database does as well; `ping` rejects when it does not. */
export function installHealth(app: HttpApp, ping: () => Promise<void>): void {
  app.get(
    "/healthz",
    {
      schema: {
        tags: ["service"],
        operationId: "readHealth",
        summary: "Does the service run?",
        response: { 200: ok },
      },
    },
    async () => ({ status: "ok" as const }),
  );
  app.get(
    "/readyz",
    {
      schema: {
        tags: ["service"],
        operationId: "readReadiness",
        summary: "Does the service run, and its database answer?",
        response: { 200: ok, ...refusalResponses("database-unavailable") },
      },
    },
    async () => {
      await ping();
      return { status: "ok" as const };
    },
  );
}
