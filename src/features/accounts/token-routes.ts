import { z } from "zod";
import { accessToken, madeToken, tokenBody } from "../../../shared/accounts.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import { browserOf } from "./entry.ts";
import type { TokenService } from "./token-service.ts";

const TAGS = ["accounts"];
const config = { access: "signed-in" } as const;
const ALWAYS = ["not-signed-in", "not-permitted", "not-found"] as const;

/** Personal access tokens, for the pages where one looks after them: a token makes no other. */
export function registerTokenRoutes(app: HttpApp, service: TokenService): void {
  const list = {
    tags: TAGS,
    operationId: "listTokens",
    summary: "List one's tokens",
    description: "Those that ran out included, until they are revoked.",
    response: { 200: z.object({ items: z.array(accessToken) }), ...refusalResponses(...ALWAYS) },
  };
  app.get("/api/me/tokens", { schema: list, config }, async (request) => ({
    items: await service.list(browserOf(request)),
  }));

  const make = {
    tags: TAGS,
    operationId: "createToken",
    summary: "Create a token",
    description:
      "For a program that acts in one's name, sent as `Authorization: Bearer …`. It may do what one may oneself, less where scope or club say so, and nothing to the account: it is made with the cookie of a sign-in, not with another token. The answer alone shows it.",
    body: tokenBody.meta({
      examples: [{ name: "Backup", scope: "read", club: null, expiresAt: "2027-03-01T00:00:00Z" }],
    }),
    response: {
      201: madeToken,
      ...refusalResponses(...ALWAYS, "validation-failed", "malformed-json", "conflict", "unprocessable"),
    },
  };
  app.post("/api/me/tokens", { schema: make, config }, async (request, reply) =>
    reply.code(201).send(await service.make(browserOf(request), request.body)),
  );

  const revoke = {
    tags: TAGS,
    operationId: "removeToken",
    summary: "Revoke a token",
    description: "It is good for nothing from now on.",
    params: z.strictObject({ token: z.uuid().meta({ description: "Id of the token, as listed." }) }),
    response: {
      204: z.null().meta({ description: "It is revoked." }),
      ...refusalResponses(...ALWAYS, "validation-failed"),
    },
  };
  app.delete("/api/me/tokens/:token", { schema: revoke, config }, async (request, reply) => {
    await service.revoke(browserOf(request), request.params.token);
    return reply.code(204).send(undefined as never);
  });
}
