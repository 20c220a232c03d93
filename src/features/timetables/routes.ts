import { z } from "zod";
import { recordState } from "../../../shared/records.ts";
import { newTimetableVersion, timetableVersion } from "../../../shared/timetable.ts";
import { code } from "../../../shared/units.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { isKnownToReader } from "../../http/if-none-match.ts";
import { pageOf, pageQuery, parseCursor, toPage } from "../../http/pages.ts";
import { entityTag, readPrecondition } from "../../http/preconditions.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import { answer, present } from "../../records/answer.ts";
import { changeHeaders, readHeaders } from "../../records/collection-schemas.ts";
import { versionNumber } from "../../records/version-number.ts";
import { timetableKind } from "./kinds.ts";
import type { VersionService } from "./service.ts";

const URL = "/api/clubs/:club/timetables/:timetable/versions";
const params = z.strictObject({ club: code, timetable: code });
const versionParams = z.strictObject({ ...params.shape, version: versionNumber });
const record = z.object({ ...timetableVersion.shape, ...recordState }).meta({ id: "TimetableVersionRecord" });
const tags = ["timetables"];
const BODY_REFUSALS = [
  "validation-failed",
  "malformed-json",
  "body-too-large",
  "unsupported-media-type",
] as const;
const CHANGE_REFUSALS = ["not-found", "version-mismatch", "precondition-required"] as const;

/** The versions of a timetable; their trains are a collection of their own. */
export function registerVersionRoutes(app: HttpApp, service: VersionService): void {
  registerList(app, service);
  registerCreate(app, service);
  registerRead(app, service);
  registerReplace(app, service);
  registerRemove(app, service);
}

function registerList(app: HttpApp, service: VersionService): void {
  const schema = {
    tags,
    operationId: "listTimetableVersions",
    summary: "List the versions of a timetable",
    description: "In the order of their numbers.",
    params,
    querystring: pageQuery,
    response: { 200: pageOf(record), ...refusalResponses("validation-failed", "not-found") },
  };
  app.get(URL, { schema }, async ({ params: { club, timetable }, query: { limit, cursor } }) => {
    const [after] = parseCursor(cursor, z.tuple([z.int()])) ?? [0];
    const rows = await service.list(club, timetable, after, limit + 1);
    return toPage(rows, limit, ({ body }) => [body.number], present);
  });
}

function registerCreate(app: HttpApp, service: VersionService): void {
  const schema = {
    tags,
    operationId: "createTimetableVersion",
    summary: "Start a new version of a timetable",
    description:
      "A draft with the next number and copies of the trains of the last version, or of the one named.",
    params,
    body: newTimetableVersion.meta({ examples: [{ from: 1, note: "Goods trains later" }] }),
    response: {
      201: record,
      ...refusalResponses("not-found", "conflict", "unprocessable", ...BODY_REFUSALS),
    },
  };
  app.post(
    URL,
    { schema, config: { access: timetableKind.keep } },
    async ({ params: { club, timetable }, body }, reply) => {
      const stored = await service.create(club, timetable, body);
      const parts = [club, "timetables", timetable, "versions", String(stored.body.number)];
      reply.code(201).header("location", `/api/clubs/${parts.map(encodeURIComponent).join("/")}`);
      return answer(reply, stored);
    },
  );
}

function registerRead(app: HttpApp, service: VersionService): void {
  const schema = {
    tags,
    operationId: "readTimetableVersion",
    summary: "Read a timetable version",
    description: "Its ETag is what If-Match of a change must name.",
    params: versionParams,
    headers: readHeaders,
    response: {
      200: record,
      304: z.null().meta({ description: "The reader has this version already." }),
      ...refusalResponses("validation-failed", "not-found"),
    },
  };
  app.get(`${URL}/:version`, { schema }, async (request, reply) => {
    const { club, timetable, version } = request.params;
    const stored = await service.read(club, timetable, version);
    if (!isKnownToReader(request, stored.version)) return answer(reply, stored);
    return reply
      .code(304)
      .header("etag", entityTag(stored.version))
      .send(undefined as never);
  });
}

function registerReplace(app: HttpApp, service: VersionService): void {
  const schema = {
    tags,
    operationId: "replaceTimetableVersion",
    summary: "Replace a timetable version",
    description:
      "Its trains are not part of it. Set `state` to `issued` to issue it: from then on its trains and number stay as they are.",
    params: versionParams,
    headers: changeHeaders,
    body: timetableVersion.meta({ examples: [{ number: 2, state: "issued", note: "As printed" }] }),
    response: {
      200: record,
      ...refusalResponses(
        "version-issued",
        "duplicate-code",
        "conflict",
        ...CHANGE_REFUSALS,
        ...BODY_REFUSALS,
      ),
    },
  };
  app.put(`${URL}/:version`, { schema, config: { access: timetableKind.keep } }, async (request, reply) => {
    const { club, timetable, version } = request.params;
    const precondition = readPrecondition(request);
    return answer(reply, await service.replace(club, timetable, version, request.body, precondition));
  });
}

function registerRemove(app: HttpApp, service: VersionService): void {
  const schema = {
    tags,
    operationId: "removeTimetableVersion",
    summary: "Remove a timetable version",
    description: "With its trains. Refused while a session uses it; the refusal names the sessions.",
    params: versionParams,
    headers: changeHeaders,
    response: {
      204: z.null().meta({ description: "It is gone." }),
      ...refusalResponses("in-use", "conflict", "validation-failed", ...CHANGE_REFUSALS),
    },
  };
  app.delete(
    `${URL}/:version`,
    { schema, config: { access: timetableKind.keep } },
    async (request, reply) => {
      const { club, timetable, version } = request.params;
      await service.remove(club, timetable, version, readPrecondition(request));
      return reply.code(204).send(undefined as never);
    },
  );
}
