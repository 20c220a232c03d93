import { z } from "zod";
import { acceptedCorrections, comparison, estimates } from "../../../shared/estimates.ts";
import { code } from "../../../shared/units.ts";
import type { HttpApp } from "../../http/create-http.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import type { ReadingService } from "./service.ts";

const clubParams = z.strictObject({ club: code });
const slotParams = z.strictObject({ club: code, session: code, slot: code });

export function registerReadingRoutes(app: HttpApp, service: ReadingService): void {
  app.get(
    "/api/clubs/:club/estimates",
    {
      config: { access: "read" },
      schema: {
        tags: ["readings"],
        operationId: "readEstimates",
        summary: "What every locomotive draws, and how that is known",
        description:
          "For each locomotive running, standing, stalled and as power returns: the roster's figure and its source, the median and spread of its readings, and what checks reckon with, with how far it may be off. Without readings the range is an assumption by the figure's source.",
        params: clubParams,
        response: { 200: estimates, ...refusalResponses("not-found", "database-unavailable") },
      },
    },
    async ({ params }) => service.estimate(params.club),
  );
  app.post(
    "/api/clubs/:club/sessions/:session/slots/:slot/compare-readings",
    {
      config: { access: "read", changesNothing: true },
      schema: {
        tags: ["readings"],
        operationId: "compareReadings",
        summary: "A slot's readings of districts beside its plan",
        description:
          "Needs no body. Each reading beside what the plan says the district bears at that moment and who draws it, locomotives that stood in for failed ones included, and the corrections to locomotives' figures that follow where the readings tell them apart. Nothing is written.",
        params: slotParams,
        response: {
          200: comparison,
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
    async ({ params }) => service.compare(params),
  );
  app.post(
    "/api/clubs/:club/accept-corrections",
    {
      config: { access: "keep-roster" },
      schema: {
        tags: ["readings"],
        operationId: "acceptCorrections",
        summary: "Make corrections the roster's figures",
        description:
          "Writes the figures into the roster, as measured: all of them, or none where a locomotive has changed since its correction was proposed.",
        params: clubParams,
        body: acceptedCorrections.meta({
          examples: [{ corrections: [{ locomotive: "E7", state: "running", ma: 320, version: 1 }] }],
        }),
        response: {
          200: estimates,
          ...refusalResponses(
            "validation-failed",
            "not-found",
            "version-mismatch",
            "conflict",
            "database-unavailable",
          ),
        },
      },
    },
    async ({ params, body }) => service.accept(params.club, body),
  );
}
