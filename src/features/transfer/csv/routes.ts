import { z } from "zod";
import { LIMITS } from "../../../../shared/limits.ts";
import { train } from "../../../../shared/timetable.ts";
import { importResult } from "../../../../shared/transfer.ts";
import { code } from "../../../../shared/units.ts";
import type { HttpApp } from "../../../http/bare-app.ts";
import { refusalResponses } from "../../../http/problem-details.ts";
import { toWords } from "../../../lib/words.ts";
import type { Coded, RecordKind } from "../../../records/record-kind.ts";
import { dryRun } from "../routes.ts";
import { type Column, PATH_COLUMNS, TRAIN_COLUMNS } from "./columns.ts";
import { toRecordSheet } from "./record-sheet.ts";
import type { SheetKind, SheetService } from "./service.ts";
import { decodeUtf8, type Sheet, writeSheet } from "./sheet.ts";
import { toTrainSheet } from "./train-sheet.ts";

const CSV = "text/csv";
const TRAINS_URL = "/api/clubs/:club/timetables/:timetable/versions/:version/trains.csv";

const params = z.strictObject({ club: code });
const trainParams = z.strictObject({
  club: code,
  timetable: code,
  version: z.coerce.number().int().min(1).max(LIMITS.versions),
});
const querystring = z.strictObject({ dryRun });

/** A sheet as a media type, with one of its kind's example record for the reference page. */
const csvContent = (example: Sheet) => {
  const text = writeSheet(example).replace(/^\ufeff/, "");
  return { content: { [CSV]: { schema: z.string().meta({ examples: [text] }) } } };
};

const READ_REFUSALS = refusalResponses("validation-failed", "not-found");
const IMPORT_REFUSALS = [
  "validation-failed",
  "not-found",
  "conflict",
  "body-too-large",
  "unsupported-media-type",
  "unprocessable",
] as const;

const listColumns = (columns: readonly Column[]) =>
  columns.map(({ name, required }) => (required ? `**${name}**` : name)).join(", ");

const describeColumns = (columns: readonly Column[]) =>
  `CSV of RFC 4180 in UTF-8 with a heading. Columns, in any order, those in bold required: ${listColumns(columns)}. A list stands in one cell
with semicolons between. A cell that a spreadsheet would take for a formula has an apostrophe before it, which reading takes off again.`;

const HOW_IMPORTED = `Records are known by their codes: new ones are made, those that differ changed, those not named stay. A column left out keeps
what a record has. All or nothing; every refusal names row (the heading is 1) and column.`;

/** Sheets for spreadsheets, out and in. Their addresses end in `.csv` beside the collections, where no code can stand. */
export async function registerSheetRoutes(
  app: HttpApp,
  service: SheetService,
  kinds: readonly SheetKind[],
  trainKind: RecordKind,
): Promise<void> {
  await app.register(async (scope) => {
    scope.removeAllContentTypeParsers();
    scope.addContentTypeParser(CSV, { parseAs: "buffer" }, async (_: unknown, body: Buffer) =>
      decodeUtf8(body),
    );
    for (const kind of kinds) registerRecords(scope as unknown as HttpApp, service, kind);
    registerTrains(scope as unknown as HttpApp, service, trainKind);
  });
}

function registerRecords(app: HttpApp, service: SheetService, sheetKind: SheetKind): void {
  const { kind, columns } = sheetKind;
  const many = toWords(kind.many);
  const url = `/api/clubs/:club/${kind.many}.csv`;
  const sheet = csvContent(toRecordSheet(columns, [kind.schema.parse(kind.example) as Coded]));
  const Many = kind.many.charAt(0).toUpperCase() + kind.many.slice(1);
  app.get(
    url,
    {
      schema: {
        tags: ["transfer"],
        operationId: `export${Many}`,
        summary: `Read all ${many} as CSV`,
        description: describeColumns(columns),
        params,
        response: { 200: { description: `The ${many}, one a row.`, ...sheet }, ...READ_REFUSALS },
      },
    },
    async (request, reply) => {
      const text = await service.exportRecords(request.params.club, sheetKind);
      return reply.type(`${CSV}; charset=utf-8; header=present`).send(text);
    },
  );
  app.post(
    url,
    {
      config: { access: kind.keep },
      schema: {
        tags: ["transfer"],
        operationId: `import${Many}`,
        summary: `Make and change ${many} from CSV`,
        description: `${describeColumns(columns)} ${HOW_IMPORTED}`,
        params,
        querystring,
        body: sheet,
        response: { 200: importResult, ...refusalResponses(...IMPORT_REFUSALS) },
      },
    },
    async ({ params: { club }, query, body }) =>
      service.importRecords(club, sheetKind, String(body), query.dryRun === "true"),
  );
}

const ABOUT_TRAINS = `${describeColumns([...TRAIN_COLUMNS, ...PATH_COLUMNS])} One row an entry of the path: the first row of a
train says what is said of it as a whole, the others repeat its code or leave it empty. A locomotive at the rear is written \`E7:rear\`.`;

function registerTrains(app: HttpApp, service: SheetService, kind: RecordKind): void {
  const sheet = csvContent(toTrainSheet([train.parse(kind.example)]));
  app.get(
    TRAINS_URL,
    {
      schema: {
        tags: ["transfer"],
        operationId: "exportTrains",
        summary: "Read the trains of a timetable version as CSV",
        description: ABOUT_TRAINS,
        params: trainParams,
        response: {
          200: { description: "The trains, one row an entry of the path.", ...sheet },
          ...READ_REFUSALS,
        },
      },
    },
    async ({ params: { club, timetable, version } }, reply) => {
      const text = await service.exportTrains(club, timetable, version);
      return reply.type(`${CSV}; charset=utf-8; header=present`).send(text);
    },
  );
  app.post(
    TRAINS_URL,
    {
      config: { access: kind.keep },
      schema: {
        tags: ["transfer"],
        operationId: "importTrains",
        summary: "Make and change the trains of a timetable version from CSV",
        description: `${ABOUT_TRAINS} ${HOW_IMPORTED}`,
        params: trainParams,
        querystring,
        body: sheet,
        response: { 200: importResult, ...refusalResponses("version-issued", ...IMPORT_REFUSALS) },
      },
    },
    async ({ params: { club, timetable, version }, query, body }) =>
      service.importTrains(club, { timetable, version, kind }, String(body), query.dryRun === "true"),
  );
}
