import { z } from "zod";
import { selectorSchedule } from "../../../shared/selector-schedule.ts";
import { code } from "../../../shared/units.ts";
import type { HttpApp } from "../../http/create-http.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import type { SelectorService } from "./service.ts";

const CSV = "text/csv";
const slotParams = z.strictObject({ club: code, session: code, slot: code });

const REFUSALS = refusalResponses(
  "validation-failed",
  "not-found",
  "too-many-trains",
  "unprocessable",
  "database-unavailable",
);

export function registerSelectorRoutes(app: HttpApp, service: SelectorService): void {
  app.post(
    "/api/clubs/:club/sessions/:session/slots/:slot/selector-schedule",
    {
      config: { access: "read", changesNothing: true },
      schema: {
        tags: ["check"],
        operationId: "makeSelectorSchedule",
        summary: "When to turn which selector of the analog panel",
        description: `Needs no body. From all off at the start, by time and by section, with the outputs that need the fewest turns. No selector is
turned while anything runs in its section, and parked stock stands in sections switched off. A slot that has no schedule is a
good answer: \`status\` and \`reasons\` say why.`,
        params: slotParams,
        response: { 200: selectorSchedule, ...REFUSALS },
      },
    },
    async ({ params }) => service.make(params),
  );

  app.get(
    "/api/clubs/:club/sessions/:session/slots/:slot/selector-schedule.csv",
    {
      schema: {
        tags: ["check"],
        operationId: "readSelectorSheet",
        summary: "The selector schedule as a sheet",
        description: "One row a turn, by time. 422 where the slot has no schedule.",
        params: slotParams,
        response: {
          200: { description: "The turns.", content: { [CSV]: { schema: z.string() } } },
          ...REFUSALS,
        },
      },
    },
    async ({ params }, reply) => {
      const sheet = await service.makeSheet(params);
      const name = encodeURIComponent(`selectors-${params.session}-${params.slot}`);
      return reply
        .type(`${CSV}; charset=utf-8`)
        .header("content-disposition", `attachment; filename="${name}.csv"`)
        .send(sheet);
    },
  );
}
