import type { FastifyReply } from "fastify";
import { z } from "zod";
import { demoSignIn, signInBody } from "../../../shared/accounts.ts";
import type { HttpApp } from "../../http/bare-app.ts";
import { clearSignInCookie, readSignInCookie, setSignInCookie } from "../../http/cookies.ts";
import { refusalResponses } from "../../http/problem-details.ts";
import { Refusal } from "../../lib/refusal.ts";
import type { AccountDeps } from "./deps.ts";
import { TooManyAttempts } from "./guesses.ts";
import type { SignInService } from "./sign-in-service.ts";

const TAGS = ["accounts"];
const nothing = z.null().meta({ description: "Done." });

/** Signing in and out, and what the demo lets everyone sign in with. */
export function registerSignInRoutes(
  app: HttpApp,
  service: SignInService,
  { demoSignIns }: AccountDeps,
): void {
  const signIn = {
    tags: TAGS,
    operationId: "signIn",
    summary: "Sign in",
    description:
      "Sets a cookie that signs this browser in for up to 30 days, and for 14 without use. Scripts send a personal access token instead. Wrong passwords make one wait, longer each time.",
    body: signInBody.meta({ examples: [{ email: "ada@example.org", password: "four lamps in the yard" }] }),
    response: {
      204: nothing,
      ...refusalResponses(
        "validation-failed",
        "malformed-json",
        "wrong-sign-in",
        "cross-site",
        "too-many-attempts",
      ),
    },
  };
  app.post("/api/sign-in", { schema: signIn, config: { access: "public" } }, async (request, reply) => {
    const before = readSignInCookie(request);
    const made = await withRetryAfter(reply, () => service.signIn(request.body, request.ip, before));
    setSignInCookie(reply, made.token, made.expires);
    return reply.code(204).send(undefined as never);
  });

  const signOut = {
    tags: TAGS,
    operationId: "signOut",
    summary: "Sign out",
    description: "Ends this browser's sign-in, on the service too. Harmless where there is none.",
    response: { 204: nothing, ...refusalResponses("cross-site") },
  };
  app.post("/api/sign-out", { schema: signOut, config: { access: "public" } }, async (request, reply) => {
    await service.signOut(readSignInCookie(request));
    clearSignInCookie(reply);
    return reply.code(204).send(undefined as never);
  });

  const demo = {
    tags: TAGS,
    operationId: "listDemoSignIns",
    summary: "List the demo's sign-ins",
    description: "One for each role, while the service shows its demo club; otherwise there is nothing here.",
    response: { 200: z.object({ items: z.array(demoSignIn) }), ...refusalResponses("not-found") },
  };
  app.get("/api/demo-sign-ins", { schema: demo, config: { access: "public" } }, async () => {
    if (demoSignIns === undefined) throw new Refusal("not-found", "This service shows no demo.");
    return { items: [...demoSignIns] };
  });
}

/** Says in a header how long to wait, where one must. */
export async function withRetryAfter<T>(reply: FastifyReply, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof TooManyAttempts) reply.header("retry-after", error.waitS);
    throw error;
  }
}
