import { z } from "zod";
import { oneTimeLink, redeemBody, resetBody } from "../../../shared/accounts.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { setSignInCookie } from "../../http/cookies.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import type { LinkService } from "./link-service.ts";
import type { ResetService } from "./reset-service.ts";
import { withRetryAfter } from "./sign-in-routes.ts";

const TAGS = ["accounts"];
const config = { access: "public" } as const;
const MOST_TOKEN_SIGNS = 200;
const params = z.strictObject({
  token: z.string().min(1).max(MOST_TOKEN_SIGNS).meta({ description: "What ends the link's address." }),
});

/** Links that work once: an invitation, a new password, the first secretary's account. */
export function registerLinkRoutes(app: HttpApp, links: LinkService, resets: ResetService): void {
  const read = {
    tags: TAGS,
    operationId: "readOneTimeLink",
    summary: "Read what a one-time link is for",
    description: "Looking does not use it up.",
    params,
    response: { 200: oneTimeLink, ...refusalResponses("validation-failed", "not-found") },
  };
  app.get("/api/links/:token", { schema: read, config }, ({ params }) => links.read(params.token));

  const redeem = {
    tags: TAGS,
    operationId: "useOneTimeLink",
    summary: "Use a one-time link",
    description:
      "An invitation takes `name` and `password`, or nothing once one is signed in with the address it was sent to; a reset `password`; the first secretary's account `name`, `email` and `password`. Whoever was not signed in then is.",
    params,
    body: redeemBody.meta({ examples: [{ name: "Ada Fenwright", password: "four lamps in the yard" }] }),
    response: {
      204: z.null().meta({ description: "Done; the link is good for nothing now." }),
      ...refusalResponses(
        "validation-failed",
        "malformed-json",
        "not-signed-in",
        "cross-site",
        "not-found",
        "conflict",
      ),
    },
  };
  app.post("/api/links/:token", { schema: redeem, config }, async (request, reply) => {
    const made = await links.redeem(request.params.token, request.body, request.actor);
    if (made) setSignInCookie(reply, made.token, made.expires);
    return reply.code(204).send(undefined as never);
  });

  const reset = {
    tags: TAGS,
    operationId: "requestReset",
    summary: "Ask for a new password",
    description:
      "If there is an account with the address, a link goes there by mail. The answer is the same if there is none.",
    body: resetBody.meta({ examples: [{ email: "ada@example.org" }] }),
    response: {
      202: z.null().meta({ description: "Whatever there was to do is under way." }),
      ...refusalResponses("validation-failed", "malformed-json", "cross-site", "too-many-attempts"),
    },
  };
  app.post("/api/reset-requests", { schema: reset, config }, async (request, reply) => {
    await withRetryAfter(reply, () => resets.request(request.body.email, request.ip, request.log));
    return reply.code(202).send(undefined as never);
  });
  app.addHook("onClose", () => resets.settled());
}
