import { z } from "zod";
import { TRAIL_KINDS, trailEntry } from "../../../shared/trail.ts";
import { code } from "../../../shared/units.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { pageOf, pageQuery, parseCursor, toPage } from "../../http/pages.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import type { TrailService } from "./service.ts";

const instant = z.iso.datetime({ offset: true });

const query = z.strictObject({
  ...pageQuery.shape,
  kind: z.enum(TRAIL_KINDS).optional().meta({ description: "Only changes of this kind." }),
  code: z
    .string()
    .min(1)
    .max(120)
    .regex(/^[^\0]*$/)
    .optional()
    .meta({
      description: "Only changes of what then had this code: give `kind` as well.",
    }),
  person: z.uuid().optional().meta({ description: "Only what this person did: `by.person` of an entry." }),
  session: code.optional().meta({ description: "Only what belongs to this night." }),
  from: instant.optional().meta({ description: "Only changes from this instant on." }),
  to: instant.optional().meta({ description: "Only changes before this instant." }),
});

const cursorKey = z.tuple([z.int().min(1)]);
const toDate = (text: string | undefined) => (text === undefined ? undefined : new Date(text));

export function registerTrailRoutes(app: HttpApp, service: TrailService): void {
  app.get(
    "/api/clubs/:club/trail",
    {
      config: { access: "read-trail" },
      schema: {
        tags: ["trail"],
        operationId: "readTrail",
        summary: "Read who changed what",
        description: "The newest first. Entries are never changed; a person who has left is no longer named.",
        params: z.strictObject({ club: code }),
        querystring: query,
        response: {
          200: pageOf(trailEntry),
          ...refusalResponses("validation-failed", "not-found", "not-permitted"),
        },
      },
    },
    async (request) => {
      const { cursor, limit, kind, code: codeThen, person, session, from, to } = request.query;
      const [before] = parseCursor(cursor, cursorKey) ?? [];
      const { rows, present } = await service.read(
        request.params.club,
        { kind, code: codeThen, person, session, from: toDate(from), to: toDate(to) },
        { before, limit: limit + 1 },
      );
      return toPage(rows, limit, ({ seq }) => [Number(seq)], present);
    },
  );
}
