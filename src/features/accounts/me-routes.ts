import { z } from "zod";
import { eraseBody, me, meBody, passwordBody, personExport } from "../../../shared/accounts.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { clearSignInCookie } from "../../http/cookies.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import { browserOf, visitorOf } from "./entry.ts";
import type { MeService } from "./me-service.ts";
import { withRetryAfter } from "./sign-in-routes.ts";

const TAGS = ["accounts"];
const config = { access: "signed-in" } as const;
const WRITE = [
  "validation-failed",
  "malformed-json",
  "not-permitted",
  "conflict",
  "too-many-attempts",
] as const;

/** Whoever is signed in, to themselves. */
export function registerMeRoutes(app: HttpApp, service: MeService): void {
  const read = {
    tags: TAGS,
    operationId: "readMe",
    summary: "Read who is signed in",
    description: "With the clubs that the sign-in or token opens, and what one may do in each.",
    response: { 200: me, ...refusalResponses("not-signed-in", "not-found") },
  };
  app.get("/api/me", { schema: read, config }, (request) => service.read(visitorOf(request)));

  const rename = {
    tags: TAGS,
    operationId: "replaceMe",
    summary: "Change one's name",
    description: "What one is called as a person; a club's list of members is its secretary's.",
    body: meBody.meta({ examples: [{ name: "Ada Fenwright" }] }),
    response: { 200: me, ...refusalResponses("not-signed-in", "not-found", ...WRITE) },
  };
  app.put("/api/me", { schema: rename, config }, async (request) => {
    const visitor = browserOf(request);
    await service.rename(visitor, request.body.name);
    return service.read(visitor);
  });

  const password = {
    tags: TAGS,
    operationId: "changePassword",
    summary: "Change one's password",
    description: "Ends all other sign-ins. Tokens stay: they are revoked one by one.",
    body: passwordBody.meta({
      examples: [{ current: "four lamps in the yard", password: "five lamps in the shed" }],
    }),
    response: {
      204: z.null().meta({ description: "The new one holds." }),
      ...refusalResponses("not-signed-in", "not-found", ...WRITE),
    },
  };
  app.post("/api/me/password", { schema: password, config }, async (request, reply) => {
    const visitor = browserOf(request);
    await withRetryAfter(reply, () => service.changePassword(visitor, request.body, request.ip));
    return reply.code(204).send(undefined as never);
  });

  registerLeaving(app, service);
}

function registerLeaving(app: HttpApp, service: MeService): void {
  const exported = {
    tags: TAGS,
    operationId: "exportMe",
    summary: "Read all that is kept of one",
    description: "Of the account and of the member in each club; what is kept only as a hash is left out.",
    response: { 200: personExport, ...refusalResponses("not-signed-in", "not-permitted", "not-found") },
  };
  app.get("/api/me/export", { schema: exported, config }, (request) => service.exportAll(browserOf(request)));

  const erase = {
    tags: TAGS,
    operationId: "eraseMe",
    summary: "Erase one's account",
    description:
      "For good: name, e-mail address, password, sign-ins, tokens; in each club's list the name becomes neutral, and the roles go. Nights keep what was done in them. Refused to the last secretary of a club.",
    body: eraseBody.meta({ examples: [{ password: "four lamps in the yard" }] }),
    response: {
      204: z.null().meta({ description: "It is gone." }),
      ...refusalResponses("not-signed-in", "not-found", "last-secretary", "booking-holds", ...WRITE),
    },
  };
  app.post("/api/me/erase", { schema: erase, config }, async (request, reply) => {
    const visitor = browserOf(request);
    await withRetryAfter(reply, () => service.erase(visitor, request.body.password, request.ip));
    clearSignInCookie(reply);
    return reply.code(204).send(undefined as never);
  });
}
