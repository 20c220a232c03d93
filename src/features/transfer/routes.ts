import { z } from "zod";
import { clubDocument } from "../../../shared/documents.ts";
import { DOCUMENT_PARTS, type DocumentPart, importResult } from "../../../shared/transfer.ts";
import { code } from "../../../shared/units.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import type { TransferService } from "./service.ts";

const params = z.strictObject({ club: code });
const anyPart = DOCUMENT_PARTS.join("|");

const parts = z
  .string()
  .regex(
    new RegExp(`^(${anyPart})(,(${anyPart}))*$`),
    `Write some of ${DOCUMENT_PARTS.join(", ")}, with commas between.`,
  )
  .default(DOCUMENT_PARTS.join(","))
  .meta({
    description: "Which parts, with commas between; all of them unless said.",
    examples: ["layout,roster"],
  });

export const dryRun = z
  .enum(["true", "false"])
  .default("false")
  .meta({ description: "`true`: try everything, keep nothing, answer what would happen." });

const EXAMPLE = {
  layout: {
    areas: [{ code: "main", name: "Main line" }],
    places: [{ code: "west", name: "West yard" }],
    sections: [
      { code: "L1", name: "Line 1", area: "main", use: "line", lengthMm: 3_000, wiring: "digital" },
      {
        code: "W1",
        name: "Road 1",
        area: "main",
        place: "west",
        use: "yard",
        lengthMm: 2_400,
        wiring: "digital",
      },
    ],
    links: [{ code: "W1-L1", from: "W1", to: "L1" }],
  },
} satisfies z.input<typeof clubDocument>;

/** The whole club out and in as one JSON document. */
export function registerDocumentRoutes(app: HttpApp, service: TransferService): void {
  registerExport(app, service);
  registerImport(app, service);
}

function registerExport(app: HttpApp, service: TransferService): void {
  app.get(
    "/api/clubs/:club/export",
    {
      schema: {
        tags: ["transfer"],
        operationId: "exportClub",
        summary: "Read a club's records as one document",
        description:
          "As of one moment, every list in the order of codes. Imported into an empty club it gives the same document again.",
        params,
        querystring: z.strictObject({ parts }),
        response: { 200: clubDocument, ...refusalResponses("validation-failed", "not-found") },
      },
    },
    async ({ params: { club }, query }) => service.exportClub(club, query.parts.split(",") as DocumentPart[]),
  );
}

function registerImport(app: HttpApp, service: TransferService): void {
  app.post(
    "/api/clubs/:club/import",
    {
      config: { access: "keep-club" },
      schema: {
        tags: ["transfer"],
        operationId: "importClub",
        summary: "Make and change a club's records from one document",
        description: `Records are known by their codes: new ones are made, those that differ are changed, and what the document does not name stays
as it is. All of it is stored or nothing. What a check would find (a path over sections that are not linked, times running
backwards) is taken as it is; what makes no sense at all is refused with every place named.`,
        params,
        querystring: z.strictObject({ dryRun }),
        body: clubDocument.meta({ examples: [EXAMPLE] }),
        response: {
          200: importResult,
          ...refusalResponses(
            "validation-failed",
            "malformed-json",
            "not-found",
            "conflict",
            "body-too-large",
            "unsupported-media-type",
            "unprocessable",
          ),
        },
      },
    },
    async ({ params: { club }, query, body }) =>
      service.importClub(club, body, { dryRun: query.dryRun === "true" }),
  );
}
