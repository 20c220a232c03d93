import { z } from "zod";
import { bothWays, costTimetable } from "../../../shared/costing.ts";
import { code } from "../../../shared/units.ts";
import type { HttpApp } from "../../http/create-http.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import { versionNumber } from "../../records/version-number.ts";
import type { CostingService } from "./service.ts";

const versionParams = z.strictObject({ club: code, timetable: code, version: versionNumber });
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
  app.post(
    "/api/clubs/:club/timetables/:timetable/versions/:version/both-ways",
    {
      config: { access: "read", changesNothing: true },
      schema: {
        tags: ["costing"],
        operationId: "costTimetableBothWays",
        summary: "What a whole timetable would take all-analog and all-digital",
        description:
          "As for a slot, from the pick-up for the first train to the hand-in of the last, at the clock ratio given, under the club's own policy; no night need have booked it.",
        params: versionParams,
        body: costTimetable.meta({ examples: [{ clockRatio: 4 }] }),
        response: {
          200: bothWays,
          ...refusalResponses("validation-failed", "not-found", "unprocessable", "database-unavailable"),
        },
      },
    },
    async ({ params, body }) => service.costTimetable(params, body.clockRatio),
  );
}
