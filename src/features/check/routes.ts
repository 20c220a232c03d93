import { z } from "zod";
import { checkReport } from "../../../shared/check.ts";
import { planDocument } from "../../../shared/documents.ts";
import { LIMITS } from "../../../shared/limits.ts";
import { code } from "../../../shared/units.ts";
import type { HttpApp } from "../../http/create-http.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import { tooManyTrains } from "./errors.ts";
import { examplePlan } from "./example-plan.ts";
import type { CheckService } from "./service.ts";

const slotParams = z.strictObject({ club: code, session: code, slot: code });

const WHAT_IT_FINDS = `The answer lists every finding with its sentence, figure, limit and moment, and the curves, occupations
and needs behind them. Times are given on both clocks, ms count from the slot's start. A plan that does not fit is
a good answer (200, verdict \`stopped\`); only what cannot be computed is refused.`;

export function registerCheckRoutes(app: HttpApp, service: CheckService): void {
  app.post(
    "/api/check",
    {
      config: { access: "signed-in", changesNothing: true },
      // counted before it is read in full, so that an absurd plan is answered at once
      preValidation: async ({ body }) => {
        const trains = (body as { trains?: unknown } | null)?.trains;
        if (Array.isArray(trains) && trains.length > LIMITS.trains) throw tooManyTrains(trains.length);
      },
      schema: {
        tags: ["check"],
        operationId: "checkPlan",
        summary: "Check a whole plan, nothing stored",
        description: `Post layout, roster, handsets, trains and slot in one document. ${WHAT_IT_FINDS}`,
        body: planDocument.meta({ examples: [examplePlan] }),
        response: {
          200: checkReport,
          ...refusalResponses(
            "validation-failed",
            "malformed-json",
            "too-many-trains",
            "body-too-large",
            "unsupported-media-type",
            "unprocessable",
          ),
        },
      },
    },
    async ({ body }) => service.checkPlan(body),
  );

  app.post(
    "/api/clubs/:club/sessions/:session/slots/:slot/check",
    {
      config: { access: "read", changesNothing: true },
      schema: {
        tags: ["check"],
        operationId: "checkSlot",
        summary: "Check a stored slot of a session",
        description: `Needs no body. ${WHAT_IT_FINDS}`,
        params: slotParams,
        response: {
          200: checkReport,
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
    async ({ params }) => service.checkSlot(params),
  );
}
