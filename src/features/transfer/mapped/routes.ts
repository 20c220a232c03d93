import { z } from "zod";
import {
  mappedImport,
  mappedResult,
  rosterSheet,
  suggestedMapping,
} from "../../../../shared/mapped-import.ts";
import { code } from "../../../../shared/units.ts";
import type { HttpApp } from "../../../http/bare-app.ts";
import { refusalResponses } from "../../../http/problem-details.ts";
import type { MappedService } from "./service.ts";

const params = z.strictObject({ club: code });
const SHEET = "Number;Name;Length (cm);Amps;DCC\n4711;Goods engine;21,5;0,35;3";

const constant = (constantMa: number) => ({
  column: null,
  unit: "mA",
  constantMa,
  source: "rule of thumb",
});
const EXAMPLE = {
  code: "Number",
  name: "Name",
  length: { column: "Length (cm)", unit: "cm", constantMm: null },
  running: { column: "Amps", unit: "A", constantMa: null, source: "measured" },
  standing: constant(100),
  stall: constant(900),
  inrush: constant(400),
  maxSpeed: { column: null, unit: "km/h" },
  address: "DCC",
  owner: null,
  note: null,
};

export function registerMappedRoutes(app: HttpApp, service: MappedService): void {
  app.post(
    "/api/clubs/:club/roster-sheet/columns",
    {
      config: { access: "read", changesNothing: true },
      schema: {
        tags: ["transfer"],
        operationId: "suggestRosterColumns",
        summary: "Guess which columns of a spreadsheet hold what of a locomotive",
        description:
          "Reads a sheet with commas, semicolons or tabs between its cells and looks at headings, units in them and cells. Nothing is stored.",
        params,
        body: rosterSheet.meta({ examples: [{ text: SHEET }] }),
        response: {
          200: suggestedMapping,
          ...refusalResponses(
            "validation-failed",
            "malformed-json",
            "body-too-large",
            "unsupported-media-type",
          ),
        },
      },
    },
    async ({ body }) => service.suggest(body.text),
  );
  app.post(
    "/api/clubs/:club/roster-sheet",
    {
      config: { access: "keep-roster" },
      schema: {
        tags: ["transfer"],
        operationId: "importRosterSheet",
        summary: "Make and change locomotives and decoders from a spreadsheet with columns of its own",
        description:
          "Says which column holds what, in which unit, and what to take where nothing is said. Lengths in mm, cm, m or inches, currents in mA or A, speeds in km/h or mph; a cell may name its own unit, or a column beside it (`unitColumn`). What it says nothing of stays as it is where the locomotive is there already; so does a figure from a surer source than the column's, which `kept` tells. A point or comma before three digits is read as the rest of the sheet writes it, and refused where that leaves doubt. All or nothing; every refusal names row (the heading is 1) and column. Try it with `dryRun` first.",
        params,
        body: mappedImport.meta({ examples: [{ text: SHEET, mapping: EXAMPLE, dryRun: true }] }),
        response: {
          200: mappedResult,
          ...refusalResponses(
            "validation-failed",
            "malformed-json",
            "not-found",
            "conflict",
            "body-too-large",
            "unsupported-media-type",
            "unprocessable",
            "database-unavailable",
          ),
        },
      },
    },
    async ({ params: { club }, body: { text, mapping, dryRun } }) =>
      service.bringIn(club, text, mapping, dryRun),
  );
}
