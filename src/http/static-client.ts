import { existsSync } from "node:fs";
import path from "node:path";
import fastifyStatic from "@fastify/static";
import type { FastifyInstance, FastifyRequest } from "fastify";
import { Refusal } from "../lib/refusal.ts";
import { sendProblem, toProblem } from "./problem-details.ts";

// names of built files carry a hash of what is in them
const HASHED = `${path.sep}assets${path.sep}`;

/**
 * Serves the built client, its start page for every address of a page a browser asks for. Everything else that nobody
 * answers to is not found, in problem details; so is a known address with a wrong method.
 */
export async function installClient(app: FastifyInstance, clientDir: string | undefined): Promise<void> {
  const served = clientDir !== undefined && existsSync(path.join(clientDir, "index.html"));
  if (served)
    await app.register(fastifyStatic, {
      root: clientDir,
      wildcard: false,
      cacheControl: false,
      dotfiles: "ignore",
      setHeaders: (reply, file) => {
        reply.header(
          "cache-control",
          file.includes(HASHED) ? "public, max-age=31536000, immutable" : "no-cache",
        );
      },
    });
  app.setNotFoundHandler((request, reply) => {
    if (served && isPageVisit(request)) return reply.sendFile("index.html");
    const refusal = new Refusal("not-found", `Nothing answers to ${request.method} ${pathOf(request)}.`);
    return sendProblem(reply, toProblem(refusal));
  });
}

const pathOf = (request: FastifyRequest) => request.url.split("?", 1)[0] ?? "";

function isPageVisit(request: FastifyRequest): boolean {
  const wantsPage = request.method === "GET" && (request.headers.accept?.includes("text/html") ?? false);
  return wantsPage && !/^\/(api|assets|problems)(\/|$)/.test(pathOf(request));
}
