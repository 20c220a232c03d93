import type { FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { PICTURE_BYTES, PICTURE_TYPES, pictureList, pictureSummary } from "../../../shared/pictures.ts";
import { code } from "../../../shared/units.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { isTagKnown } from "../../http/if-none-match.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import type { PictureService } from "./service.ts";
import type { Pictured } from "./store.ts";

const picture = z.any().meta({ type: "string", format: "binary", description: "The bytes of a picture." });
const BYTES = Object.fromEntries(PICTURE_TYPES.map((type) => [type, { schema: picture }]));

/** A picture opened by itself must not become a page that runs anything, whatever a browser takes it for. */
const INERT = "default-src 'none'; sandbox";

/** The bytes come as they are, so these routes read bodies of every type, by their own limit. */
export async function registerPictureRoutes(app: HttpApp, service: PictureService): Promise<void> {
  registerList(app, service);
  await app.register(async (scope) => {
    scope.removeAllContentTypeParsers();
    scope.addContentTypeParser(
      "*",
      { parseAs: "buffer", bodyLimit: PICTURE_BYTES },
      (_: unknown, body: unknown, done: (error: Error | null, body: unknown) => void) => done(null, body),
    );
    for (const of of ["locomotive", "rake"] as const)
      registerPictures(scope as unknown as HttpApp, service, of);
  });
}

function registerList(app: HttpApp, service: PictureService): void {
  app.get(
    "/api/clubs/:club/pictures",
    {
      schema: {
        tags: ["roster"],
        operationId: "listPictures",
        summary: "List which locomotives and rakes have a picture",
        description: "Codes alone: each picture has an address of its own.",
        params: z.strictObject({ club: code }),
        response: { 200: pictureList, ...refusalResponses("validation-failed", "not-found") },
      },
    },
    async ({ params }) => service.list(params.club),
  );
}

function registerPictures(app: HttpApp, service: PictureService, of: Pictured): void {
  const url = `/api/clubs/:club/${of}s/:${of}/picture`;
  const params = z.strictObject({ club: code, [of]: code } as Record<"club" | Pictured, typeof code>);
  const Of = of === "locomotive" ? "Locomotive" : "Rake";
  const schema = { tags: ["roster"], params };
  app.get(
    url,
    {
      schema: {
        ...schema,
        operationId: `read${Of}Picture`,
        summary: `Read the picture of a ${of}`,
        description: "As it was sent, without what cameras write beside the picture.",
        response: {
          200: { description: "The picture.", content: BYTES },
          304: z.null().meta({ description: "It is the one that If-None-Match names." }),
          ...refusalResponses("validation-failed", "not-found"),
        },
      },
    },
    async (request, reply) => {
      const found = await service.read(request.params.club, of, request.params[of]);
      return sendPicture(request, reply, found);
    },
  );
  app.put(
    url,
    {
      config: { access: "keep-roster" },
      bodyLimit: PICTURE_BYTES,
      schema: {
        ...schema,
        operationId: `keep${Of}Picture`,
        summary: `Give a ${of} a picture, or another`,
        description:
          "PNG, JPEG or WebP of 2 MiB at most, known by its bytes. Place, time, device and texts that cameras write into it are taken out before it is kept. Follows its record when that is renamed, and goes with it. It is no part of the club's document.",
        body: { content: BYTES },
        response: {
          200: pictureSummary,
          ...refusalResponses("validation-failed", "not-found", "body-too-large"),
        },
      },
    },
    async ({ params, body }, reply) => {
      const kept = await service.put(params.club, of, params[of], body);
      return reply.header("etag", `"${kept.tag}"`).send(kept);
    },
  );
  app.delete(
    url,
    {
      config: { access: "keep-roster" },
      schema: {
        ...schema,
        operationId: `remove${Of}Picture`,
        summary: `Remove the picture of a ${of}`,
        description: "The record stays.",
        response: {
          204: z.null().meta({ description: "It is gone." }),
          ...refusalResponses("validation-failed", "not-found"),
        },
      },
    },
    async ({ params }, reply) => {
      await service.remove(params.club, of, params[of]);
      return reply.code(204).send(undefined as never);
    },
  );
}

interface Sent {
  readonly mediaType: string;
  readonly digest: string;
  readonly bytes: Buffer;
}

function sendPicture(request: FastifyRequest, reply: FastifyReply, { mediaType, digest, bytes }: Sent) {
  const etag = `"${digest}"`;
  reply.headers({
    etag,
    // others on the same device must not find it; asking whether it is still the same costs a line
    "cache-control": "private, no-cache",
    "x-content-type-options": "nosniff",
    "content-security-policy": INERT,
  });
  if (isTagKnown(request, etag)) return reply.code(304).send(undefined as never);
  return reply.type(mediaType).send(bytes);
}
