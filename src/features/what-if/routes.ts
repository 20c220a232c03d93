import { z } from "zod";
import { code } from "../../../shared/units.ts";
import {
  effectsAnswer,
  effectsRequest,
  keepAnswer,
  keepRequest,
  tryAnswer,
  tryRequest,
} from "../../../shared/what-if.ts";
import type { HttpApp } from "../../http/create-http.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import type { WhatIfService } from "./service.ts";

const slotParams = z.strictObject({ club: code, session: code, slot: code });

const EXAMPLE_STEPS = [
  { do: "move", train: "1A03", minutes: 5 },
  { do: "change-locomotive", train: "3G04", from: "51", to: "77" },
];

export function registerWhatIfRoutes(app: HttpApp, service: WhatIfService): void {
  app.post(
    "/api/clubs/:club/sessions/:session/slots/:slot/try",
    {
      config: { access: "read", changesNothing: true },
      schema: {
        tags: ["what-if"],
        operationId: "trySlot",
        summary: "Check a slot with other trains, nothing stored",
        description:
          "Moves trains, gives them other locomotives, leaves rakes or trains out, and checks the slot so. What appears and what clears is told against the slot as it is.",
        params: slotParams,
        body: tryRequest.meta({ examples: [{ steps: EXAMPLE_STEPS }] }),
        response: {
          200: tryAnswer,
          ...refusalResponses(
            "validation-failed",
            "malformed-json",
            "not-found",
            "too-many-trains",
            "unprocessable",
            "unsupported-media-type",
            "database-unavailable",
          ),
        },
      },
    },
    async ({ params, body }) => service.try(params, body.steps),
  );

  app.post(
    "/api/clubs/:club/sessions/:session/slots/:slot/try/keep",
    {
      config: { access: "keep-timetables" },
      schema: {
        tags: ["what-if"],
        operationId: "keepTry",
        summary: "Keep what was tried as a draft of the timetable",
        description:
          "Makes a new draft version of the slot's timetable with what was tried, all or nothing. The slot goes on with the version it has until somebody books the new one.",
        params: slotParams,
        body: keepRequest.meta({
          examples: [{ steps: EXAMPLE_STEPS, note: "District west no longer trips." }],
        }),
        response: {
          201: keepAnswer,
          ...refusalResponses(
            "validation-failed",
            "malformed-json",
            "not-found",
            "unprocessable",
            "conflict",
            "unsupported-media-type",
            "database-unavailable",
          ),
        },
      },
    },
    async ({ params, body }, reply) => {
      reply.code(201);
      return service.keep(params, body.steps, body.note);
    },
  );

  app.post(
    "/api/clubs/:club/effects",
    {
      config: { access: "read", changesNothing: true },
      schema: {
        tags: ["what-if"],
        operationId: "tellEffects",
        summary: "What changed records do to the nights to come, nothing stored",
        description:
          "Checks every slot to come as it is and with the changes: which nights would stop, which findings appear. Without changes it tells how the nights stand.",
        params: z.strictObject({ club: code }),
        body: effectsRequest.meta({
          examples: [
            {
              changes: {
                layout: { districts: [{ code: "D-West", name: "West", supply: "B1", breakerMa: 2_500 }] },
              },
            },
          ],
        }),
        response: {
          200: effectsAnswer,
          ...refusalResponses(
            "validation-failed",
            "malformed-json",
            "not-found",
            "body-too-large",
            "unsupported-media-type",
            "database-unavailable",
          ),
        },
      },
    },
    async ({ params, body }) => service.effects(params.club, body.changes),
  );
}
