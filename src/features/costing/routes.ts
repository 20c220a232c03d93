import { z } from "zod";
import { bothWays } from "../../../shared/costing.ts";
import { code } from "../../../shared/units.ts";
import type { HttpApp } from "../../http/create-http.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import type { CostingService } from "./service.ts";

const slotParams = z.strictObject({ club: code, session: code, slot: code });

export function registerCostingRoutes(app: HttpApp, service: CostingService): void {
  app.post(
    "/api/clubs/:club/sessions/:session/slots/:slot/both-ways",
    {
      config: { access: "read", changesNothing: true },
      schema: {
        tags: ["costing"],
        operationId: "costBothWays",
        summary:
          "What a slot's timetable would take all-analog and all-digital, and how far the equipment goes",
        description:
          "Needs no body. All-analog: outputs, what each must reach, sections to divide, selector turns, currents. All-digital: handsets, decoders, districts and boosters. Side by side with the assumptions; and the most trains that the present equipment bears at once, with what gives first.",
        params: slotParams,
        response: {
          200: bothWays,
          ...refusalResponses("validation-failed", "not-found", "unprocessable", "database-unavailable"),
        },
      },
    },
    async ({ params }) => service.cost(params),
  );
}
