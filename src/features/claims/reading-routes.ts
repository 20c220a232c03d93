import { z } from "zod";
import { board, fairness, myEvening } from "../../../shared/claims.ts";
import { code } from "../../../shared/units.ts";
import type { DatabaseClient } from "../../database/client.ts";
import { membershipOf } from "../../http/actor.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import { readFairness } from "./fairness.ts";
import type { ClaimReading } from "./reading.ts";
import { SLOT, slotParams, tags } from "./routes.ts";

const REFUSALS = refusalResponses("validation-failed", "not-found");

export function registerReadingRoutes(app: HttpApp, database: DatabaseClient, reading: ClaimReading): void {
  app.get(
    `${SLOT}/board`,
    {
      schema: {
        tags,
        operationId: "readBoard",
        summary: "Read the claim board of a slot",
        description:
          "Its trains and duties as whoever asks sees them: who has each, whether one may claim it and if not why, how far one walks, which handset a claim would take; and one's own evening.",
        params: slotParams,
        response: { 200: board, ...REFUSALS },
      },
    },
    async (request) => reading.board(membershipOf(request, request.params.club), request.params),
  );
  app.get(
    "/api/clubs/:club/sessions/:session/my-evening",
    {
      schema: {
        tags,
        operationId: "readMyEvening",
        summary: "Read what one does on a night",
        description: "What, when, where, with which handset and address, and who hands over to whom.",
        params: z.strictObject({ club: code, session: code }),
        querystring: z.strictObject({
          member: code.optional().meta({
            description: "Another's evening, for whoever may book or runs the night; left out: one's own.",
          }),
        }),
        response: { 200: myEvening, ...REFUSALS, ...refusalResponses("not-permitted", "unprocessable") },
      },
    },
    async (request) =>
      reading.evening(membershipOf(request, request.params.club), request.params, request.query.member),
  );
  app.get(
    "/api/clubs/:club/fairness",
    {
      config: { access: "book" },
      schema: {
        tags,
        operationId: "readFairness",
        summary: "Read who has driven how much in a year",
        description: "Every member, who has driven least first. Nights count once they are run.",
        params: z.strictObject({ club: code }),
        querystring: z.strictObject({
          year: z.coerce
            .number()
            .int()
            .min(1_970)
            .max(2_999)
            .meta({ description: "Of the club's calendar.", examples: [2027] }),
        }),
        response: { 200: fairness, ...REFUSALS },
      },
    },
    async (request) => readFairness(database, request.params.club, request.query.year),
  );
}
