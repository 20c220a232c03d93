import { z } from "zod";
import { code } from "../../../shared/units.ts";
import { wiringReport } from "../../../shared/wiring.ts";
import type { HttpApp } from "../../http/create-http.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import type { WiringService } from "./service.ts";

const slotParams = z.strictObject({ club: code, session: code, slot: code });

export function registerWiringRoutes(app: HttpApp, service: WiringService): void {
  app.post(
    "/api/clubs/:club/sessions/:session/slots/:slot/wiring",
    {
      config: { access: "read", changesNothing: true },
      schema: {
        tags: ["wiring"],
        operationId: "reportWiring",
        summary: "Whether the districts are wired for what a slot draws",
        description:
          "Needs no body. For each power district, at the peak that the slot's trains cause: resistance there and back, volts lost and left, what a short at the far end would bring against its breaker, the thinnest conductor that would do, the last short test and the steps of the next. It advises; it certifies nothing.",
        params: slotParams,
        response: {
          200: wiringReport,
          ...refusalResponses(
            "validation-failed",
            "not-found",
            "too-many-trains",
            "unprocessable",
            "database-unavailable",
          ),
        },
      },
    },
    async ({ params }) => service.report(params),
  );
}
