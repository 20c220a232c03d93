import fastifyCookie from "@fastify/cookie";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";

// the prefix makes browsers keep it to this host, secure, for all paths (RFC 6265bis section 4.1.3.2)
export const SIGN_IN_COOKIE = "__Host-foreman";
const ATTRIBUTES = { path: "/", secure: true, httpOnly: true, sameSite: "lax" } as const;

export async function installCookies(app: FastifyInstance): Promise<void> {
  await app.register(fastifyCookie);
}

/** The token in the cookie of whoever is signed in. */
export const readSignInCookie = (request: FastifyRequest): string | undefined =>
  request.cookies[SIGN_IN_COOKIE];

/** Lets the browser be signed in until then, or until it is told otherwise. */
export function setSignInCookie(reply: FastifyReply, token: string, expires: Date): void {
  reply.setCookie(SIGN_IN_COOKIE, token, { ...ATTRIBUTES, expires });
}

export function clearSignInCookie(reply: FastifyReply): void {
  setSignInCookie(reply, "", new Date(0));
}
