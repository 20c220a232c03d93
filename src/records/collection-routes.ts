import type { FastifyRequest } from "fastify";
import { z } from "zod";
import { code } from "../../shared/units.ts";
import type { DatabaseClient } from "../database/client.ts";
import type { RecordRow } from "../database/records/record-table.ts";
import type { Access } from "../http/authorise.ts";
import type { HttpApp } from "../http/bare-app.ts";
import { isKnownToReader } from "../http/if-none-match.ts";
import { pageOf, parseCursor, toPage } from "../http/pages.ts";
import { entityTag, readPrecondition } from "../http/preconditions.ts";
import { refusalResponses } from "../http/problem-details.ts";
import { capitalise, toPath, toWords } from "../lib/words.ts";
import { answer, present } from "./answer.ts";
import { type Collection, createCollection, type Destination } from "./collection.ts";
import {
  bodySchema,
  changeHeaders,
  listQuery,
  readHeaders,
  recordSchema,
  toWhere,
} from "./collection-schemas.ts";
import type { Coded, RecordKind } from "./record-kind.ts";

export type AddressParams = Readonly<Record<string, string>>;

export interface CollectionAddress {
  /** All before the collection's own name: `/api/clubs/:club`. */
  readonly under: string;
  /** The parameters in `under`. */
  readonly params: z.ZodRawShape;
  /** Heading on the API's reference page. */
  readonly tag: string;
  /** Who may list and create, where the collection is in no club. */
  readonly access?: Access;
  /** @throws Refusal not-found when the address leads nowhere */
  resolve(params: AddressParams, request: FastifyRequest): Promise<Destination>;
}

const cursorKey = z.tuple([code]);

/** The five routes of a collection of records: list, create, read, replace, remove. */
export function installCollection<Body extends Coded, Row extends RecordRow>(
  app: HttpApp,
  database: DatabaseClient,
  kind: RecordKind<Body, Row>,
  address: CollectionAddress,
): void {
  const url = `${address.under}/${toPath(kind.many)}`;
  const frame: Frame<Body> = {
    app,
    kind,
    collection: createCollection(database, kind),
    url,
    recordUrl: `${url}/:${kind.one}`,
    tags: [address.tag],
    readers: address.access ?? "read",
    makers: address.access ?? kind.keep,
    params: z.strictObject(address.params),
    recordParams: z.strictObject({ ...address.params, [kind.one]: code }),
    record: recordSchema(kind),
    names: describeKind(kind),
    placeOf: (request) => address.resolve(paramsOf(request), request),
    codeOf: (request) => paramsOf(request)[kind.one] ?? "",
  };
  installList(frame);
  installCreate(frame);
  installRead(frame);
  installReplace(frame);
  installRemove(frame);
}

/** What the routes of one collection share. */
interface Frame<Body extends Coded> {
  readonly app: HttpApp;
  readonly kind: RecordKind<Body, never>;
  readonly collection: Collection<Body>;
  readonly url: string;
  readonly recordUrl: string;
  readonly tags: string[];
  readonly readers: Access;
  readonly makers: Access;
  readonly params: z.ZodType;
  readonly recordParams: z.ZodType;
  readonly record: z.ZodType;
  readonly names: ReturnType<typeof describeKind>;
  placeOf(request: FastifyRequest): Promise<Destination>;
  codeOf(request: FastifyRequest): string;
}

function installList<Body extends Coded>(frame: Frame<Body>): void {
  const { kind, tags, params, record, names } = frame;
  const schema = {
    tags,
    operationId: `list${names.Many}`,
    summary: `List ${names.many}`,
    description: `${kind.about} In the order of their codes.`,
    params,
    querystring: listQuery(kind),
    response: { 200: pageOf(record), ...refusalResponses("validation-failed", "not-found") },
  };
  frame.app.get(frame.url, { schema, config: { access: frame.readers } }, async (request) => {
    const query = request.query as Record<string, unknown> & { limit: number; cursor?: string };
    const [after] = parseCursor(query.cursor, cursorKey) ?? [];
    const place = await frame.placeOf(request);
    const rows = await frame.collection.list(place, {
      where: toWhere(kind, query),
      after,
      limit: query.limit + 1,
    });
    return toPage(rows, query.limit, ({ body }) => [body.code], present);
  });
}

function installCreate<Body extends Coded>(frame: Frame<Body>): void {
  const { kind, tags, params, record, names } = frame;
  const schema = {
    tags,
    operationId: `create${names.One}`,
    summary: `Create ${names.aOne}`,
    description: `${kind.about} The records it names must be there already. Location says where it is from now on.`,
    params,
    body: bodySchema(kind),
    response: { 201: record, ...refusalResponses("not-found", ...WRITE_REFUSALS) },
  };
  frame.app.post(frame.url, { schema, config: { access: frame.makers } }, async (request, reply) => {
    const stored = await frame.collection.create(await frame.placeOf(request), request.body as Body);
    const path = (request.url.split("?", 1)[0] ?? "").replace(/\/$/, "");
    reply.code(201).header("location", `${path}/${encodeURIComponent(stored.body.code)}`);
    return answer(reply, stored);
  });
}

function installRead<Body extends Coded>(frame: Frame<Body>): void {
  const { tags, recordParams: params, record, names } = frame;
  const schema = {
    tags,
    operationId: `read${names.One}`,
    summary: `Read ${names.aOne}`,
    description: "Its ETag is what If-Match of a change must name.",
    params,
    headers: readHeaders,
    response: {
      200: record,
      304: z.null().meta({ description: "The reader has this version already." }),
      ...refusalResponses("validation-failed", "not-found"),
    },
  };
  frame.app.get(frame.recordUrl, { schema }, async (request, reply) => {
    const stored = await frame.collection.read(await frame.placeOf(request), frame.codeOf(request));
    if (!isKnownToReader(request, stored.version)) return answer(reply, stored);
    return reply
      .code(304)
      .header("etag", entityTag(stored.version))
      .send(undefined as never);
  });
}

function installReplace<Body extends Coded>(frame: Frame<Body>): void {
  const { kind, tags, recordParams: params, record, names } = frame;
  const schema = {
    tags,
    operationId: `replace${names.One}`,
    summary: `Replace ${names.aOne}`,
    description:
      "Send the whole body; what it leaves out takes its default. Another `code` renames it, and whatever refers to it follows.",
    params,
    headers: changeHeaders,
    body: bodySchema(kind),
    response: { 200: record, ...refusalResponses("not-found", ...WRITE_REFUSALS, ...CHANGE_REFUSALS) },
  };
  frame.app.put(frame.recordUrl, { schema, config: { access: kind.keep } }, async (request, reply) => {
    const precondition = readPrecondition(request);
    const place = await frame.placeOf(request);
    const body = request.body as Body;
    return answer(reply, await frame.collection.replace(place, frame.codeOf(request), body, precondition));
  });
}

function installRemove<Body extends Coded>(frame: Frame<Body>): void {
  const { kind, tags, recordParams: params, names } = frame;
  const schema = {
    tags,
    operationId: `remove${names.One}`,
    summary: `Remove ${names.aOne}`,
    description: "Refused while other records refer to it; the refusal names them.",
    params,
    headers: changeHeaders,
    response: {
      204: z.null().meta({ description: "It is gone." }),
      ...refusalResponses("validation-failed", "not-found", "conflict", ...CHANGE_REFUSALS),
    },
  };
  frame.app.delete(frame.recordUrl, { schema, config: { access: kind.keep } }, async (request, reply) => {
    const precondition = readPrecondition(request);
    await frame.collection.remove(await frame.placeOf(request), frame.codeOf(request), precondition);
    return reply.code(204).send(undefined as never);
  });
}

const WRITE_REFUSALS = [
  "validation-failed",
  "malformed-json",
  "body-too-large",
  "unsupported-media-type",
  "duplicate-code",
  "conflict",
  "unprocessable",
] as const;
const CHANGE_REFUSALS = ["in-use", "version-mismatch", "precondition-required"] as const;

function describeKind({ one, many }: Pick<RecordKind, "one" | "many">) {
  const article = /^[aeiou]/.test(one) ? "an" : "a";
  return {
    One: capitalise(one),
    Many: capitalise(many),
    many: toWords(many),
    aOne: `${article} ${toWords(one)}`,
  };
}

const paramsOf = (request: FastifyRequest) => request.params as AddressParams;
