import type { FastifyRequest } from "fastify";
import { z } from "zod";
import { code } from "../../../shared/units.ts";
import type { Authenticate } from "../../http/actor.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import { Refusal } from "../../lib/refusal.ts";
import type { EventsService } from "./service.ts";

const headers = z.looseObject({
  "last-event-id": z.string().optional().meta({
    description: "The `id` of the last event that was received: those after it come first. Browsers send it.",
  }),
});

/** Undefined for none; no number of ours is below 0, so that what is none of ours counts as a lost history. */
const toNumber = (id: string | undefined) =>
  id === undefined || id === "" ? undefined : /^\d{1,15}$/.test(id) ? Number(id) : Number.POSITIVE_INFINITY;

export function registerEventRoutes(app: HttpApp, service: EventsService, authenticate: Authenticate): void {
  app.get(
    "/api/clubs/:club/events",
    {
      // a HEAD would open a stream and wait for its end
      exposeHeadRoute: false,
      schema: {
        tags: ["events"],
        operationId: "streamEvents",
        summary: "Hear of changes as they happen",
        description: `Server-sent events. Each \`data\` is JSON, \`{ seq, kind, code, deed, session? }\` as the trail has them: what changed, not how;
read it again. After a break the events missed come first. An event may come twice. Every 15 seconds a comment shows that
the line stands; it ends within that time when the sign-in does.`,
        params: z.strictObject({ club: code }),
        headers,
        response: {
          200: {
            description: "A stream that stays open.",
            content: { "text/event-stream": { schema: z.string() } },
          },
          204: z.null().meta({
            description:
              "What was missed cannot be told: read everything again, and open a stream anew without Last-Event-ID.",
          }),
          ...refusalResponses("validation-failed", "not-found"),
        },
      },
    },
    async (request, reply) => {
      const { club } = request.params;
      const after = toNumber(request.headers["last-event-id"]);
      const stream = await service.open(club, after, () => stillMay(request, club));
      if (!stream) return reply.code(204).send(undefined as never);
      return reply
        .type("text/event-stream; charset=utf-8")
        .header("cache-control", "no-store")
        .header("x-accel-buffering", "no")
        .send(stream.body as never);
    },
  );

  /** Where it cannot be found out, as without a database, it is not the sign-in that has ended. */
  async function stillMay(request: FastifyRequest, club: string): Promise<boolean> {
    try {
      const actor = await authenticate(request);
      return actor?.membership(club)?.permissions.has("read") ?? false;
    } catch (error) {
      return !(error instanceof Refusal);
    }
  }
}
